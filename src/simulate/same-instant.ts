/** Times closer than this many seconds count as the same instant (a convention of the rules). */
export const SAME_INSTANT_S = 1e-6;

/** Seconds in a day of the wall clock; days with a daylight-saving change are not modelled. */
export const DAY_S = 86_400;
