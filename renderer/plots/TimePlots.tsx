export const TimePlots = () => null;
