import js from "@eslint/js";
import svelte from "eslint-plugin-svelte";
import globals from "globals";
import ts from "typescript-eslint";

// The arrows of the house: shared <- hardware, shared <- server, shared <- kiosk.
const arrow = (files, groups, ignores = []) => ({
  files,
  ignores,
  rules: {
    "@typescript-eslint/no-restricted-imports": [
      "error",
      {
        patterns: groups.map(([group, message, allowTypeImports = false]) => ({
          group,
          message,
          allowTypeImports,
        })),
      },
    ],
  },
});
const noNode = [["node:*", "fs", "path", "crypto", "os"], "shared/ is pure: no Node in it."];
const noRooms = [
  ["**/hardware/**", "**/server/**", "**/kiosk/**"],
  "shared/ imports nothing outside shared/: pass what it needs in.",
];
const noZod = [["zod", "zod/*"], "Schemas live in files named *.schema.ts."];

export default ts.config(
  { ignores: ["dist/", ".data/", ".results/", "coverage/", "node_modules/"] },
  js.configs.recommended,
  {
    files: ["**/*.ts", "**/*.svelte", "**/*.svelte.ts"],
    extends: [...ts.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: {
        projectService: true,
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: [".svelte"],
      },
    },
    rules: {
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      "@typescript-eslint/require-await": "off",
    },
  },
  ...svelte.configs.recommended,
  {
    files: ["**/*.svelte", "**/*.svelte.ts"],
    languageOptions: { parserOptions: { parser: ts.parser } },
  },
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  arrow(["shared/**/*.ts"], [noNode, noRooms, noZod], ["shared/**/*.schema.ts"]),
  arrow(["shared/**/*.schema.ts"], [noNode, noRooms]),
  arrow(["hardware/**/*.ts"], [[["**/server/**", "**/kiosk/**"], "hardware/ imports shared/ only."]]),
  arrow(
    ["server/**/*.ts"],
    [
      [["**/kiosk/**"], "server/ never imports kiosk/."],
      [["**/hardware/**"], "Only server/parts.ts and the commands open the hardware.", true],
      [["onoff", "node-libgpiod"], "Pins are opened in the scanner child only."],
    ],
    ["server/parts.ts", "server/commands/**"],
  ),
  arrow(
    ["kiosk/**/*.ts", "kiosk/**/*.svelte"],
    [
      [["**/server/**", "**/hardware/**"], "kiosk/ imports shared/ only."],
      [
        ["**/shared/rules/**", "**/shared/circuit/**", "**/shared/electrical/**"],
        "Every verdict and number comes from the server.",
        true,
      ],
      noZod,
    ],
  ),
  {
    files: ["shared/**/*.ts"],
    rules: {
      "no-restricted-properties": [
        "error",
        { object: "Date", property: "now", message: "Pass nowMs in." },
        { object: "Math", property: "random", message: "Pass a seeded generator in." },
      ],
      "no-restricted-syntax": [
        "error",
        { selector: "NewExpression[callee.name='Date']", message: "Pass nowMs in." },
      ],
      "no-console": "error",
    },
  },
  { files: ["**/*.js", "**/*.mjs"], extends: [ts.configs.disableTypeChecked] },
);
