export const OperatingMap = () => null;
