import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it, test } from 'vitest'
import { decodeTable, readTable, type Separator, TableError, writeTable } from '../../../src/worksheet/table/csv.ts'

describe('what separates the fields is found', () => {
  test.each([
    ['Width,Height\n420,300\n', ','],
    ['Width;Height\n420,5;300,2\n1,5;2,5', ';'],
    ['420,5;300,2\n1,5;2,5', ';'],
    ['Width\tHeight, outer\n420,5\t300;2\n', '\t'],
    ['a,b;c\nd,e;f', ','],
    ['Title,Note\n"Town; plan",x\n"Coast; west",y', ','],
    ['one\ntwo\nthree', ','],
    ['1,5\n2,5\n3,5', ','],
  ])('%j', (text, separator) => {
    expect(readTable(text).separator).toBe(separator)
  })
})

test.each([
  [
    '\ufeffa,b\r\nc,d\r\n',
    [
      ['a', 'b'],
      ['c', 'd'],
    ],
  ],
  [
    'a\tb\rc\td\r',
    [
      ['a', 'b'],
      ['c', 'd'],
    ],
  ],
  ['a,"b ""c"" d",e\n', [['a', 'b "c" d', 'e']]],
  [
    '"two\r\nlines",x\r\ny,z\r\n',
    [
      ['two\r\nlines', 'x'],
      ['y', 'z'],
    ],
  ],
  ['a,b\n\nc,d', [['a', 'b'], [''], ['c', 'd']]],
  ['a,b,c\nd\n', [['a', 'b', 'c'], ['d']]],
  ['=SUM(A1),+1,@x', [['=SUM(A1)', '+1', '@x']]],
  [
    '__proto__,constructor\n1,2',
    [
      ['__proto__', 'constructor'],
      ['1', '2'],
    ],
  ],
])('%j is read as %j', (text, rows) => {
  expect(readTable(text).rows).toEqual(rows)
})

test.each([
  ['UTF-8', [0x63, 0x6d, 0xc2, 0xb2]],
  ['UTF-16 with the low byte first', [0xff, 0xfe, 0x63, 0, 0x6d, 0, 0xb2, 0]],
  ['UTF-16 with the high byte first', [0xfe, 0xff, 0, 0x63, 0, 0x6d, 0, 0xb2]],
  ['Windows-1252', [0x63, 0x6d, 0xb2]],
])('of a file in %s is decoded', (_, bytes) => {
  expect(decodeTable(Uint8Array.from(bytes))).toBe('cm²')
})

it('of a workbook is refused, and a heading that begins like one is not', () => {
  expect(() => decodeTable(Buffer.from('PK\x03\x04\x14'))).toThrow(/workbook.*CSV/)
  expect(decodeTable(Buffer.from('PK;Width'))).toBe('PK;Width')
})

it('of nothing is refused in words, and so is what is too large', () => {
  for (const text of ['', ' \r\n', '\ufeff']) expect(() => readTable(text)).toThrow(TableError)
  expect(() => readTable('x'.repeat(50_000_001))).toThrow(/in parts/)
})

it('of more lines than asked for is refused, and of just as many is not', () => {
  expect(readTable('a\nb\nc\n', { most: 3 }).rows).toHaveLength(3)
  expect(() => readTable('a\nb\nc\nd', { most: 3 })).toThrow(/more than 3 lines/)
})

it('of rubbish still gives rows', () => {
  for (const text of ['"', '"a\n"b,c\n', '\0\0\0', ',,,\n;;;\n', '\ud800,\udfff', 'x'.repeat(1_000_000)])
    expect(readTable(text).rows.length).toBeGreaterThan(0)
})

test('any table of texts comes back the same', () => {
  const sign = fc.constantFrom(...'",;\t\r\n \'=x0|\ufeff\u2028é'.split(''))
  const field = fc.oneof(fc.string({ unit: sign, maxLength: 6 }), fc.string({ maxLength: 8 }), fc.constant(''))
  const table = fc
    .integer({ min: 1, max: 5 })
    .chain((width) => fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }))
  fc.assert(
    fc.property(table, fc.constantFrom<Separator>(',', ';', '\t'), (rows, separator) => {
      fc.pre(rows.some((row) => row.some((one) => one.trim() !== '')))
      const back = readTable(writeTable(rows, separator))
      expect(back.rows).toEqual(rows)
    }),
    { numRuns: 3000 },
  )
})

test('what begins a formula in a spreadsheet is text there, and reads back unchanged', () => {
  const fields = ['=1+1', '+A1', '-3 mm', '@SUM(A1)', '\t=1', "'=1", "''@x", '-3', '+2.5', "'tis", '\uff1d1', '=', "'"]
  const written = writeTable([fields])
  for (const field of readTable(written, { separator: ',' }).rows) expect(field).toEqual(fields)
  // As a spreadsheet splits it: no field but a number begins with a sign that starts a formula.
  const raw = Papa.parse<string[]>(written).data[0] ?? []
  expect(raw.filter((field) => /^[=+\-@\t\r\uff1d]/.test(field))).toEqual(['-3', '+2.5'])
  fc.assert(
    fc.property(
      fc.array(fc.string({ unit: fc.constantFrom('=', '+', '-', '@', "'", '1', 'a', '\t', '"', ',') })),
      (row) => {
        if (row.length === 0) return
        expect(readTable(writeTable([['x', ...row]]), { separator: ',' }).rows).toEqual([['x', ...row]])
      },
    ),
  )
})
