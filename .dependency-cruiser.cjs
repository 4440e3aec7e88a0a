// The arrows of the house, held by `npm run check`. What a comment says is what a broken arrow is told with.
const floors = "text reading trade board wiring circuit electrical rules scenario protocol".split(" ");

/** Files of a floor of shared/ import that floor and those before it. */
const slope = floors.slice(0, -1).map((floor, at) => ({
  name: `slope-${floor}`,
  comment: `shared/${floor} imports no floor that stands after it.`,
  severity: "error",
  from: { path: `^shared/${floor}/` },
  to: { path: `^shared/(${floors.slice(at + 1).join("|")})/` },
}));

const arrow = (name, comment, from, to) => ({ name, comment, severity: "error", from, to });

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...slope,
    arrow("no-circle", "Two files never need each other.", {}, { circular: true }),
    arrow(
      "known-floor",
      "A new folder of shared/ has its place on the slope.",
      { path: `^shared/(?!(${floors.join("|")})/)` },
      {},
    ),
    arrow(
      "shared-alone",
      "shared/ imports shared/ alone.",
      { path: "^shared/" },
      { path: "^(hardware|server|kiosk)/" },
    ),
    arrow(
      "hardware",
      "hardware/ imports shared/ only.",
      { path: "^hardware/" },
      { path: "^(server|kiosk)/" },
    ),
    arrow("server-no-kiosk", "server/ never imports kiosk/.", { path: "^server/" }, { path: "^kiosk/" }),
    arrow(
      "server-opens",
      "Only server/parts.ts and the commands open the hardware; types may be named.",
      { path: "^server/", pathNot: "^server/(parts[.]ts$|commands/)" },
      { path: "^hardware/", dependencyTypesNot: ["type-only"] },
    ),
    arrow("kiosk", "kiosk/ imports shared/ only.", { path: "^kiosk/" }, { path: "^(server|hardware)/" }),
    arrow(
      "kiosk-computes-nothing",
      "Every verdict and number comes with the view.",
      { path: "^kiosk/" },
      { path: "^shared/(trade|circuit|electrical|rules)/", dependencyTypesNot: ["type-only"] },
    ),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
  },
};
