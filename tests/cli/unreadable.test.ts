import { describe, expect, test } from 'vitest'
import { evenfield, file, worksheet } from './run.ts'

const given = { kind: 'given', id: 'g', name: 'width', value: '5 mm' }

describe('input that cannot be read ends with 2 and one line:', () => {
  test.each([
    ['a missing file', () => ['compute', 'no-such-file.json'], /no-such-file\.json: there is no such file/],
    ['a folder', () => ['compute', 'src'], /src: this is a folder/],
    ['bad JSON', () => ['compute', file('bad.json', '{"a":\n\u001b[31m oops')], /bad\.json: The file is not JSON/],
    ['another format', () => ['compute', 'package.json'], /not a worksheet/],
    ['a bad cell', () => ['compute', worksheet('cell.json', [given, { ...given, value: 5 }])], /cells\[1\]\.value/],
    [
      'a name not in the sheet',
      () => ['compute', worksheet('set.json', [given]), '--set', 'hight=5'],
      /no given or result named “hight”/,
    ],
    ['a --set without a value', () => ['formula', 'x', '--set', 'x'], /name=text/],
    ['a value set that cannot be read', () => ['formula', 'x', '--set', 'x=5 mx'], /--set x: .*“mx”/],
    ['a name set that cannot be one', () => ['formula', 'x', '--set', 'and=5'], /“and” cannot be a name/],
    ['an unknown option', () => ['formula', 'x', '--verbose'], /no option --verbose/],
    ['an option of sheets for a formula', () => ['formula', '1', '--advice'], /no option --advice/],
    [
      'an unknown option of a link',
      () => ['link', 'x.json', '--verbose'],
      /^evenfield: link: Unknown option '--verbose'$/m,
    ],
    ['an unknown option of composing', () => ['compose', 'x', '--verbose'], /: compose: Unknown option '--verbose'$/m],
    ['two formulas', () => ['formula', '1', '2'], /one text, found 2/],
    ['an unknown command', () => ['calculate'], /no command “calculate”/],
    ['no command', () => [], /a command is missing/],
  ])('%s', async (_, args, says) => {
    const ran = await evenfield(...args())
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err).toMatch(says)
    expect(ran.err).toMatch(/^\P{Cc}+\n$/u)
  })
})
