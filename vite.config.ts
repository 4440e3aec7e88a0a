import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

/** The bench screen, the desk and the show, each loaded apart: kiosk/ to dist/kiosk. */
export default defineConfig({
  root: "kiosk",
  // kiosk/public is a room of the kiosk, not a folder of files to be copied as they are.
  publicDir: false,
  plugins: [svelte()],
  build: {
    outDir: "../dist/kiosk",
    emptyOutDir: true,
    target: "es2023",
    reportCompressedSize: false,
    rolldownOptions: {
      input: { bench: "kiosk/index.html", desk: "kiosk/desk/index.html", show: "kiosk/show/index.html" },
    },
  },
});
