import { defineConfig, type Plugin } from 'vite'
import { functions } from './vite/functions.ts'
import { offline } from './vite/offline.ts'
import { shelfFigures } from './vite/shelf-figures.ts'
import { templates } from './vite/templates.ts'

/** What the built page may do: run its own files, and nothing else. Lit makes one trusted policy, the worker's address needs another. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html evenfield',
].join('; ')

const CHARSET = '<meta charset="utf-8">'

const policy: Plugin = {
  name: 'evenfield-policy',
  // While developing, vite itself needs inline script and style.
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler(html) {
      if (!html.includes(CHARSET)) throw new Error(`index.html lacks ${CHARSET}, where the policy is put.`)
      return html.replace(CHARSET, `${CHARSET}\n    <meta http-equiv="Content-Security-Policy" content="${POLICY}">`)
    },
  },
}

/** What is always wanted together goes in one file: it packs smaller, and is asked for once. */
const CHUNKS = [
  {
    // Parser, checker and what else knows formulas as text: templates are filled in without.
    name: 'formulas',
    includeDependenciesRecursively: false,
    test: /\/src\/language\/(arguments|broken|check[\w-]*|computable|condition|lookalikes|lower|names-in|parsed|parser[\w.]*|record-text|reference|tokens|typed|whole)\.ts$|\/src\/worksheet\/(whole|whole-sheet|renaming|follow-names|schedule-rename)\.ts$|\/node_modules\/(@lezer\/(lr|common)|expr-eval)\//,
  },
  {
    name: 'engine',
    // Else the schema of documents would come along.
    includeDependenciesRecursively: false,
    test: /\/src\/(units|language|worksheet)\/(?!document|stages|[\w-]+-kinds|kit-sorts|name-pattern|read-document|read-newer|newer-in|mover|mends|scan|probe|written|working|compare|join|vocabulary|follow\.|range|variants|run-|schedule|clipping|prepare\.)[\w.-]+\.ts$|\/src\/functions\/(maths[\w-]*|parameters|cautions)\.ts$/,
  },
  {
    name: 'lamps',
    test: /\/src\/functions\/(lamps|lamp-parameters|light-field)\.ts$/,
  },
  {
    name: 'camera',
    test: /\/src\/functions\/(framing|close-focus|sampling|tiles|tile-plan|depth|exposure|lens-[\w-]+|fit|page-curve|tube-choices)\.ts$/,
  },
]

export default defineConfig({
  base: './',
  // The answers on the shelf are picked out of the templates; the rest of a template stays in its own file.
  json: { stringify: false },
  plugins: [policy, functions(), shelfFigures(), templates(), offline()],
  build: {
    target: 'es2022',
    // The polyfill is an inline script in all but name; browsers of 2022 and later do without.
    modulePreload: { polyfill: false },
    // Data addresses for small fonts would not pass the policy.
    assetsInlineLimit: 0,
    rolldownOptions: {
      // On a slow machine these would stand between the user and the address.
      checks: { pluginTimings: false },
      output: { codeSplitting: { groups: CHUNKS } },
    },
  },
})
