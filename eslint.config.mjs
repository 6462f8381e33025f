import js from "@eslint/js";
import prettier from "eslint-config-prettier";
import tseslint from "typescript-eslint";

export default tseslint.config(
  {
    ignores: [
      "node_modules/",
      "dist/",
      "coverage/",
      "src/functions/all.ts",
      "tests/fixtures/training/",
      "tests/fixtures/spoiltFiles/",
    ],
  },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    rules: {
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: "error",
    },
  },
  {
    files: ["**/*.mjs", "**/*.cjs", "webpack.config.js"],
    languageOptions: {
      globals: {
        process: "readonly",
        console: "readonly",
        URL: "readonly",
        module: "writable",
        require: "readonly",
        __dirname: "readonly",
        setTimeout: "readonly",
        Buffer: "readonly",
      },
    },
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
  prettier,
);
