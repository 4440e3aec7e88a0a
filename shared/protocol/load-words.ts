/** How long a run of loads lasts, and how far apart its points lie, in seconds. */
export const loadRunS = 7200;
export const loadRunEveryS = 60;
