// Made by scripts/words.mjs from words/en/page.toml: do not edit.
export const words = {
  "page.name": "Flatwise",
} as const;
