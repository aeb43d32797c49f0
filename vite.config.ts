import { defineConfig, type Plugin } from 'vite'
import { functions } from './vite/functions.ts'
import { licences } from './vite/licences.ts'
import { namedInPage } from './vite/named-in-page.ts'
import { offline } from './vite/offline.ts'
import { plainImports } from './vite/plain-imports.ts'
import { published } from './vite/published.ts'
import { releasedJobs } from './vite/released.ts'
import { shelfFigures } from './vite/shelf-figures.ts'
import { templates } from './vite/templates.ts'
import { tighten } from './vite/tighten.ts'

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
    name: 'sheet',
    includeDependenciesRecursively: false,
    // The files at the root of functions/ and drawings/ say what to fetch for a name.
    test: /\/src\/cells\/(basic|elements|shared)\/|\/src\/app\/(fill|open|sheet)\/|\/src\/(functions|drawings)\/[\w-]+\.ts$|\/directives\/live\.js$/,
  },
  {
    name: 'drawn',
    includeDependenciesRecursively: false,
    test: /\/src\/drawings\/canvas\//,
  },
  {
    // Parser, checker and what else reads formulas as text: templates are filled in without them.
    name: 'formulas',
    includeDependenciesRecursively: false,
    test: /\/src\/language\/(syntax|checking|fixing|compiling)\/|\/src\/worksheet\/(own-functions|renaming)\/|\/node_modules\/(@lezer\/(lr|common)|expr-eval)\//,
  },
  {
    name: 'engine',
    // Otherwise the schema of documents would be included. Cells are moved in the Build face alone, and what is filled in
    // is told from the rest where sheets are compared.
    includeDependenciesRecursively: false,
    test: /\/src\/(units|language\/(values|evaluating)|worksheet\/(document|engine|editing(?!\/moving)|format|kinds(?!\/filled-in))|functions\/maths)\/|\/worksheet\/analysis\/provenance\.ts$/,
  },
  {
    name: 'lamps',
    test: /\/src\/functions\/lamps\//,
  },
  {
    name: 'camera',
    test: /\/src\/functions\/camera\//,
  },
]

export default defineConfig({
  base: './',
  // The answers on the shelf are picked out of the templates; the rest of a template stays in its own file.
  json: { stringify: false },
  plugins: [
    policy,
    namedInPage(),
    functions(),
    releasedJobs(),
    shelfFigures(),
    templates(),
    published(),
    tighten(),
    plainImports(),
    offline(),
    licences(),
  ],
  // Workers are modules: their parts are shared, not copied into one file each.
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    modulePreload: false,
    // One style sheet, named by the page: no script need wait for one.
    cssCodeSplit: false,
    // Data addresses for small fonts would not pass the policy.
    assetsInlineLimit: 0,
    rolldownOptions: {
      // On a slow machine these would stand between the user and the address.
      checks: { pluginTimings: false },
      output: { codeSplitting: { groups: CHUNKS } },
    },
  },
})
