import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const SOURCE = new URL('../shared/vocabulary.json', import.meta.url)
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

function row([name, { entry, unit, means }]) {
  const shown = unit === undefined || unit === '' ? '' : `\`${unit}\``
  return `| \`${name}\` | ${cell(means)} | ${shown} | ${ENTRIES[entry] ?? entry} |`
}

/** The published names as a page for people, made from the list the program reads. */
export function namesPage() {
  const { names } = JSON.parse(readFileSync(SOURCE, 'utf8'))
  const rows = Object.entries(names)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(row)
  return `# Names that join

When a template is set into an open sheet, a cell of the sheet stands for every cell of the template that bears the same
published name, so that nothing is typed twice. These are the published names, what each stands for wherever it stands, and
the unit a bare number takes. Give your own cells these names where they mean the same, and sections will join them too.

- A given of the sheet stays, and is asked once.
- A result of the sheet stays, and the template does not ask for it.
- Where the sheet has a given and the template works the figure out, the result takes the given’s place and keeps what was
  filled in as its measured value; you are asked, and may have it otherwise.
- A name that is not in this list, or stands for another kind of thing in your sheet, is asked about: the two are one, or
  the new one takes another name.

| name | stands for | unit | filled in as |
|---|---|---|---|
${rows.join('\n')}
`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(NAMES_FILE, namesPage())
  process.stdout.write(`Written: ${NAMES_FILE}\n`)
}
