export const RunFigures = () => null;
