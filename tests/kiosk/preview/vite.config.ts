import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

/** Serves the samples: npx vite --config tests/kiosk/preview/vite.config.ts, then /tests/kiosk/preview/?view=ring */
export default defineConfig({
  root: ".",
  plugins: [svelte()],
  server: { host: "127.0.0.1", port: 4790, strictPort: true },
});
