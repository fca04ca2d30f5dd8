export const Moments = () => null;
