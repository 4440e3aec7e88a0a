/** Reference method of installation of flat twin-and-earth cable, BS 7671:2018 Table 4A2. */
export type ReferenceMethod = "A" | "C" | "100" | "101" | "102" | "103";
