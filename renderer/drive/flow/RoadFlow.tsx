export const RoadFlow = () => null;
