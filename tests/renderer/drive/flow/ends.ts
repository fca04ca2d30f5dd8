/** What the road takes and gives. */
export const FREE_ENDS = ["speedingUp", "climbing", "air", "rolling", "brake"] as const;
