import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const SOURCE = new URL('../templates/parts/names.json', import.meta.url)
export const NAMES_FILE = fileURLToPath(new URL('../docs/names.md', import.meta.url))

const ENTRIES = {
  quantity: 'a quantity',
  size: 'a size, width by height',
  list: 'a list',
  choice: 'a choice',
  'yes or no': 'yes or no',
  text: 'text',
  date: 'a date',
  kit: 'a piece of kit',
  check: 'a check',
  value: 'a value of several parts',
  table: 'a table',
}

const cell = (text) => text.replaceAll('|', '\\|')

function row([name, { role, entry, unit, means, aliases = [] }]) {
  const shown = unit === undefined || unit === '' ? '' : `\`${unit}\``
  const older = aliases.map((alias) => `\`${alias}\``).join(', ')
  return `| \`${name}\` | ${cell(means)} | ${shown} | ${ENTRIES[entry] ?? entry} | ${role} | ${older} |`
}

/** The published names as a page for people, made from the list the program reads. */
export function namesPage() {
  const { names } = JSON.parse(readFileSync(SOURCE, 'utf8'))
  const rows = Object.entries(names)
    .filter(([, { inline }]) => inline === undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(row)
  return `# Published names

Sheets are composed of parts. Each name that a part publishes or asks for belongs to one role, so that nothing is computed or
typed twice. Give your own cells other names; a formula of yours reads these by name. An older name means the one in its row:
it is still read wherever a figure is set by name.

| name | meaning | unit | filled in as | role | older names |
|---|---|---|---|---|---|
${rows.join('\n')}
`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(NAMES_FILE, namesPage())
  process.stdout.write(`Written: ${NAMES_FILE}\n`)
}
