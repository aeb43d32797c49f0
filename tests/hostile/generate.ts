import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { KIT_SORTS } from '../../src/worksheet/format/kit-sorts.ts'
import { RUN_INPUTS } from '../../src/worksheet/run/inputs.ts'
import { backups, kits, numericSheets, spoiledTemplates } from './numeric.ts'

const RAN = 'globalThis.ran=true'

/** Texts that would run, load, end a string or change a prototype, where a program reads them as more than text. */
export const PAYLOADS: readonly string[] = [
  `<script>${RAN}</script>`,
  `</script><script>${RAN}</script>`,
  `"><img src=x onerror="${RAN}">`,
  `'><svg onload='${RAN}'>`,
  `</style></title></svg><svg/onload=${RAN}>`,
  `<iframe srcdoc="<script>parent.${RAN}</script>">`,
  `<math><mtext></form><form><mglyph><style></math><img src onerror=${RAN}>`,
  `javascript:${RAN}`,
  `&lt;script&gt;${RAN}&lt;/script&gt;`,
  `\${${RAN}}`,
  `{{constructor.constructor("${RAN}")()}}`,
  `"; } @import url(http://127.0.0.1:9/x); a { content: "`,
  '\\22 ; } * { background: url(http://127.0.0.1:9/z) } /*',
  '-->',
  ']]>',
  '__proto__',
  'constructor',
  'constructor.prototype.polluted',
  'toString',
  'hasOwnProperty',
  '\u202egnirts\u2066',
  '\ud800',
  '\udfff\ud83d',
  '\u0000',
  '\u2028',
  "=cmd|' /C calc'!A0",
  '410\t415\r\n408\t<b>418</b>\r\n\t\t',
  '1;2;3\n4;5;6',
  '__proto__\tconstructor [mm]\tpolluted\n1\t2\t3',
  'a,"b\n"c",=1+1\n\0,\ufeff"',
  '1e308',
  '-1e308 mm',
  '1e-320 m',
  '9'.repeat(400),
  '0x7fffffff',
  'NaN',
  'Infinity',
  '1/0',
  '± '.repeat(50),
  '('.repeat(300),
  '{'.repeat(300),
  '-'.repeat(600),
  '1:'.repeat(300),
  '9^9^9^9',
]

const WORDS = [
  'a',
  'b',
  'c',
  'x1',
  'mm',
  'm',
  'f',
  'constructor',
  'toString',
  '__proto__',
  'valueOf',
  'yes',
  'no',
  'and',
  'not',
]
const SIGNS = [
  '+',
  '-',
  '*',
  '/',
  '^',
  '(',
  ')',
  '{',
  '}',
  '[',
  ']',
  ',',
  ';',
  ':',
  '.',
  '=',
  '<',
  '>=',
  '±',
  '"',
  '%',
  ' ',
]
const NUMBERS = [
  '0',
  '1',
  '60 mm',
  '1/125 s',
  'f/8',
  '1:4',
  '400 ppi',
  '1e300',
  '1e-300',
  '5 [cd/m^2]',
  '2 ± 1',
  '-3',
  '100 %',
]

const payload = fc.constantFrom(...PAYLOADS)
const piece = fc.oneof(
  fc.constantFrom(...WORDS, ...SIGNS, ...NUMBERS),
  fc.constantFrom(...FUNCTIONS.map(({ name }) => name)),
)

/** Something that looks like a formula, and seldom is one. */
const formula = fc.oneof(
  { weight: 3, arbitrary: fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join('')) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(
        fc.constantFrom(...FUNCTIONS.map(({ name }) => name)),
        fc.array(fc.constantFrom(...NUMBERS, ...WORDS), { maxLength: 5 }),
      )
      .map(([name, args]) => `${name}(${args.join(', ')})`),
  },
  { weight: 1, arbitrary: payload },
)

const text = fc.oneof(
  { weight: 4, arbitrary: payload },
  {
    weight: 2,
    arbitrary: fc.tuple(payload, fc.string({ unit: 'binary', maxLength: 12 }), payload).map((parts) => parts.join('')),
  },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  {
    weight: 1,
    arbitrary: fc.tuple(payload, fc.integer({ min: 2, max: 200 })).map(([one, n]) => one.repeat(n).slice(0, 19_000)),
  },
)

const name = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom('a', 'b', 'c', 'x1', 'constructor', 'toString', 'valueOf', 'f', 'm') },
  text,
)
const unit = fc.oneof({ weight: 3, arbitrary: fc.constantFrom('mm', 'ppi', 'f/', '1:', '1/ s', 'stop', '') }, text)
const maybe = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(of, { nil: undefined })
const value = fc.oneof(fc.constantFrom(...NUMBERS), text)

const columnName = fc.constantFrom('a', 'b', 'width', 'constructor', 'toString', 'valueOf', 'count', 'and', 'f')
const column = fc.record({
  name: columnName,
  label: maybe(text),
  entry: maybe(fc.constantFrom('quantity', 'text', 'choice', 'tick', 'date and time')),
  unit: maybe(unit),
  options: maybe(fc.array(text, { maxLength: 3 })),
  formula: maybe(formula),
  may_be_empty: maybe(fc.boolean()),
  foot: maybe(
    fc.array(
      fc.record({
        figure: fc.constantFrom('sum', 'mean', 'least', 'greatest', 'percentile', 'count'),
        share: maybe(value),
        where: maybe(formula),
      }),
      { maxLength: 3 },
    ),
  ),
})

/** What may be where a later version has put something, or a forger. */
const strange = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constant({ constructor: { prototype: { polluted: 1 } } }),
  fc.integer({ min: 1, max: 100 }).map((depth) => JSON.parse('['.repeat(depth) + ']'.repeat(depth)) as unknown),
)

const cell = fc.oneof(
  fc.record({
    kind: fc.constant('given'),
    name,
    label: maybe(text),
    unit: maybe(unit),
    value,
    hint: maybe(text),
    entry: maybe(fc.constantFrom('quantity', 'size', 'list', 'choice', 'yes or no', 'text', 'date')),
    options: maybe(fc.array(text, { maxLength: 3 })),
    least: maybe(value),
    more_exact: maybe(fc.boolean()),
  }),
  fc.record({
    kind: fc.constant('result'),
    name,
    label: maybe(text),
    unit: maybe(unit),
    formula,
    hint: maybe(text),
    measured: maybe(value),
  }),
  fc.record({
    kind: fc.constant('check'),
    name,
    condition: formula,
    message: text,
    passes: maybe(text),
    margin: maybe(value),
  }),
  fc.record({
    kind: fc.constant('note'),
    text,
    role: maybe(fc.constantFrom('heading', 'caution', 'prose')),
    about: maybe(text),
    later: strange,
  }),
  fc.record({
    kind: fc.constant('drawing'),
    title: maybe(text),
    unit: maybe(unit),
    drawing: fc.constantFrom('set-up', 'evenness', 'depth', 'tiles', 'squareness', 'ledger', 'patches', 'constructor'),
    from: fc.dictionary(
      fc.constantFrom('lamps', 'original_width', 'original_height', 'differences', 'names', 'constructor', 'stops'),
      formula,
      { maxKeys: 5 },
    ),
  }),
  fc.record({
    kind: fc.constant('table'),
    name,
    label: maybe(text),
    columns: fc.array(column, { maxLength: 5 }),
    rows: fc.array(fc.array(value, { maxLength: 6 }), { maxLength: 5 }),
  }),
  fc.record({
    kind: fc.constant('run'),
    title: maybe(text),
    of: maybe(name),
    from: fc.dictionary(fc.constantFrom('constructor', ...RUN_INPUTS.map((input) => input.name)), formula, {
      maxKeys: 12,
    }),
    left: maybe(fc.boolean()),
  }),
  fc.record({
    kind: fc.constant('given'),
    name,
    label: maybe(text),
    entry: fc.constant('kit'),
    sort: maybe(fc.constantFrom(...KIT_SORTS)),
    value: fc.oneof(value, text),
    piece: maybe(fc.dictionary(fc.constantFrom('constructor', 'focal', 'sensor', 'reading', 'power_steps'), value)),
    fills: maybe(fc.dictionary(fc.constantFrom('constructor', 'focal', 'sensor'), fc.constantFrom('a', 'focal', 'x'))),
  }),
  fc.record({
    kind: fc.constant('steps'),
    title: maybe(text),
    steps: fc.array(
      fc.record({ text, reading: maybe(fc.constantFrom('a', 'focal', 'x')), done: maybe(fc.boolean()) }),
      {
        maxLength: 4,
      },
    ),
  }),
  fc.record({
    kind: fc.constant('range'),
    title: maybe(text),
    of: maybe(name),
    from: maybe(value),
    to: maybe(value),
    by: maybe(fc.constantFrom('even steps', 'stops', 'marks')),
    count: maybe(fc.integer({ min: 1, max: 200 })),
    results: fc.array(fc.constantFrom('a', 'b', 'x', 'focal'), { maxLength: 3 }),
  }),
  fc.record({
    kind: fc.constant('variants'),
    title: maybe(text),
    sets: fc.array(
      fc.record({ title: text, values: fc.dictionary(fc.constantFrom('constructor', 'a', 'x', 'focal'), value) }),
      { maxLength: 3 },
    ),
    results: fc.array(fc.constantFrom('a', 'b', 'x', 'focal'), { maxLength: 4 }),
  }),
  fc.record({ kind: fc.constantFrom('table', '__proto__', 'constructor'), rows: strange }),
)

/** What can be in a document that opens; a table needs its columns. */
const SOUND = new Set(['given', 'result', 'check', 'note', 'drawing', 'run', 'steps', 'range', 'variants'])

/** Documents that open: what is in them is what is hostile. */
const sound = fc
  .record({ title: text, job: maybe(text), cells: fc.array(cell, { maxLength: 12 }) })
  .map(({ title, job, cells }) => ({
    format: 'evenfield-worksheet',
    version: 2,
    title: title.slice(0, 400),
    job,
    cells: cells
      .filter((one) => SOUND.has(one.kind) || 'columns' in one)
      .map((one, at) => ({
        ...one,
        ...('name' in one && !/^[A-Za-z]\w*$/.test(one.name) ? { name: `n${at}` } : {}),
        ...('of' in one && !/^[A-Za-z]\w*$/.test(one.of ?? 'n') ? { of: `n${at - 1}` } : {}),
        ...('drawing' in one && one.drawing === 'constructor' ? { drawing: 'patches' } : {}),
        id: one.kind === 'note' && at % 3 === 0 ? `${at}"><script>` : `${at}`,
      })),
  }))
  .map((document) => JSON.stringify(document))

/** Documents with something wrong in their build. */
const unsound = fc
  .record({
    format: fc.constantFrom<unknown>('evenfield-worksheet', 'other', null),
    version: fc.oneof(fc.constantFrom<unknown>(1, 2, 99, 1e308, -1, 0.5, '1', null), strange),
    title: fc.oneof(text, strange),
    cells: fc.oneof(fc.array(fc.oneof(cell, strange), { maxLength: 8 }), strange),
    later: strange,
  })
  .map((document) => JSON.stringify(document))

const POLLUTING = [
  '"__proto__":{"polluted":1},',
  '"constructor":{"prototype":{"polluted":1}},',
  '"prototype":{"polluted":1},',
]

/** A text with a stroke of damage: cut, doubled, a character altered, a key that aims at a prototype put in. */
const damaged = fc
  .tuple(sound, fc.nat(), fc.constantFrom('cut', 'alter', 'double', 'pollute', 'deepen'), fc.constantFrom(...POLLUTING))
  .map(([json, at, how, key]) => {
    const place = at % Math.max(1, json.length)
    if (how === 'cut') return json.slice(0, place)
    if (how === 'alter') return json.slice(0, place) + String.fromCharCode(at % 65_536) + json.slice(place + 1)
    if (how === 'double') return json + json.slice(place)
    if (how === 'deepen')
      return json.replace('"cells":', `"later":${'['.repeat(at % 500)}${']'.repeat(at % 500)},"cells":`)
    return json.replaceAll('{"', `{${key}"`)
  })

export interface Case {
  readonly way: 'file' | 'link' | 'backup' | 'kit'
  readonly bytes: Uint8Array
}

const utf8 = new TextEncoder()

const withBrokenBytes = (bytes: Uint8Array, at: number): Uint8Array => {
  const broken = Uint8Array.from(bytes)
  for (let n = 0; n < 3; n++) broken[(at * (n + 1)) % Math.max(1, broken.length)] = 0x80 + ((at + n * 37) % 128)
  return broken
}

const encoded = (json: fc.Arbitrary<string>): fc.Arbitrary<Uint8Array> => json.map((one) => utf8.encode(one))
const sheets = fc.oneof(
  { weight: 3, arbitrary: sound },
  { weight: 3, arbitrary: numericSheets(text, value) },
  { weight: 1, arbitrary: spoiledTemplates(fc.oneof(value, text)) },
)
const documents = fc.record({
  way: fc.constantFrom<Case['way']>('file', 'link'),
  bytes: fc.oneof(
    { weight: 16, arbitrary: encoded(sheets) },
    { weight: 3, arbitrary: encoded(unsound) },
    { weight: 3, arbitrary: encoded(damaged) },
    { weight: 1, arbitrary: fc.tuple(sound, fc.nat()).map(([json, at]) => withBrokenBytes(utf8.encode(json), at)) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }) },
  ),
})

/** Anything someone might send: as the bytes of a file, of a link once unpacked, of a backup or a kit. */
export const cases: fc.Arbitrary<Case> = fc.oneof(
  { weight: 24, arbitrary: documents },
  {
    weight: 2,
    arbitrary: encoded(backups(fc.oneof(sound, unsound))).map((bytes) => ({ way: 'backup' as const, bytes })),
  },
  { weight: 1, arbitrary: encoded(kits(text)).map((bytes) => ({ way: 'kit' as const, bytes })) },
)

export const soundDocuments = sound
export const hostileNames = text

export const asLink = (bytes: Uint8Array | string): string => `s=1.${deflateSync(bytes).toString('base64url')}`
