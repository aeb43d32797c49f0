import { describe, expect, test } from 'vitest'
import { checkFormula, number } from '../../src/language/index.ts'
import { NONE } from '../../src/units/index.ts'
import { computed, diagnosed, expectRefused, expectSaid, SCOPE, shown } from './make.ts'

describe('names', () => {
  test('are listed in order of use, whether or not there are such cells, each with its places', () => {
    const { uses, nameSpans } = checkFormula('x + nothing * x(2) + sqrt(width)', SCOPE)
    expect(uses).toEqual(['x', 'nothing', 'width'])
    expect(nameSpans).toEqual([
      { name: 'x', from: 0, to: 1 },
      { name: 'nothing', from: 4, to: 11 },
      { name: 'x', from: 14, to: 15 },
      { name: 'width', from: 26, to: 31 },
    ])
  })

  test('are taken for texts without quotes only where a text may be', () => {
    const quoted = (text: string): boolean =>
      diagnosed(text).some(({ fixes }) => fixes.some(({ insert }) => /"\w+"/.test(insert)))
    for (const text of [
      'profile = somewhere',
      'when(lit, somewhere, "a") = "b"',
      'count({somewhere})',
      'file_limit(TIFF)',
      'file_limit(format: TIFF)',
    ])
      expect(quoted(text), text).toBe(true)
    for (const text of ['frobnicate(somewhere)', 'sqroot(x: somewhere)', 'max(somewhere, 1)', 'somewhere + 1'])
      expect(quoted(text), text).toBe(false)
  })

  test('of cells in error give no result, and no error of their own', () => {
    const { root, diagnostics, uses } = checkFormula('x + 1', { ...SCOPE, typeOf: () => 'unknown' })
    expect([root, diagnostics, uses]).toEqual([undefined, [], ['x']])
  })

  test('may be those of constants: a cell named so comes first', () => {
    const cells = new Map([
      ['pi', [number(NONE), 3] as const],
      ['infinity', [number(NONE), 9] as const],
    ])
    expect(computed('2 * pi', cells).value).toBe(6)
    expect(computed('max(infinity, 2)', cells).value).toBe(9)
    expect(computed('2 * pi').value).toBe(2 * Math.PI)
  })

  test('in a sheet that is only looked at for whether it is sound are not looked for', () => {
    const draft = checkFormula('widht', { ...SCOPE, isDraft: true })
    expect(draft.diagnostics.map(({ message }) => message)).toEqual(['There is no cell named “widht”.'])
  })

  test('are looked for in the scope’s own way where it has a quicker one', () => {
    const said = (text: string): unknown => {
      const nearestName = (name: string) => (name === 'widht' ? 'original_width' : undefined)
      return checkFormula(text, { ...SCOPE, nearestName }).diagnostics[0]?.fixes[0]?.insert
    }
    expect(said('widht')).toBe('original_width')
    expect(said('pj')).toBe('pi')
    expect(said('lot')).toBeUndefined()
  })

  test.each([
    ['widht', 'widht', ['width']],
    ['Pi', 'Pi', ['pi']],
    ['nothing_like_it', 'nothing_like_it', []],
    ['__proto__', '__proto__', []],
    ['constructor', 'constructor', []],
  ] as const)('%s, which is none, is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test('each unknown in a formula is reported', () => {
    expect(diagnosed('aaa + bbb').map(({ from, to }) => [from, to])).toEqual([
      [0, 3],
      [6, 9],
    ])
  })

  test.each([
    ['widht', 'widht', 'There is no cell named “widht”. Did you mean “width”?', ['width']],
    ['Pi', 'Pi', 'There is no cell named “Pi”. Did you mean “pi”?', ['pi']],
    ['PI * 2', 'PI', 'There is no cell named “PI”. Did you mean “pi”?', ['pi * 2']],
    ['nothing_like_it', 'nothing_like_it', 'There is no cell named “nothing_like_it”.', []],
    ['sqrt', 'sqrt', '“sqrt” is a function. Its arguments go in parentheses.', []],
    ['TRUE', 'TRUE', '“TRUE” is written “yes”.', ['yes']],
    ['True + 1', 'True', '“True” is written “yes”.', ['yes + 1']],
    ['lit = FALSE', 'FALSE', '“FALSE” is written “no”.', ['lit = no']],
    ['lit = Yes', 'Yes', '“Yes” is written “yes”.', ['lit = yes']],
    ['lit = NO', 'NO', '“NO” is written “no”.', ['lit = no']],
    ['mm', 'mm', '“mm” is a unit. Write a number before it.', ['1 mm']],
    ['mm * 2', 'mm', '“mm” is a unit. Write a number before it.', ['1 mm * 2']],
    ['kg', 'kg', '“kg” is a unit. Write a number before it.', ['1 kg']],
    ['h', 'h', 'There is no cell named “h”.', []],
    ['q', 'q', 'There is no cell named “q”.', []],
    ['f8', 'f8', 'The f-number is written “f/8”.', ['f/8']],
    ['f8 + 1', 'f8', 'The f-number is written “f/8”.', ['f/8 + 1']],
    ['F11', 'F11', 'The f-number is written “f/11”.', ['f/11']],
    ['f8x', 'f8x', 'There is no cell named “f8x”. Did you mean “x”?', ['x']],
    ['xf8', 'xf8', 'There is no cell named “xf8”. Did you mean “x”?', ['x']],
    ['F / 11', 'F / 11', 'The f-number is written “f/11”.', ['f/11']],
    ['f / 5.65', 'f / 5.65', 'The f-number is written “f/5.65”.', ['f/5.65']],
    ['f / 8', 'f / 8', 'The f-number is written “f/8”.', ['f/8']],
    ['F/8', 'F/8', 'The f-number is written “f/8”.', ['f/8']],
    ['F / 5.6', 'F / 5.6', 'The f-number is written “f/5.6”.', ['f/5.6']],
    ['f/x', 'f', 'There is no cell named “f”.', []],
    ['f  / 8', 'f', 'There is no cell named “f”.', []],
    ['f + 8', 'f', 'There is no cell named “f”.', []],
    ['g / 8', 'g', 'There is no cell named “g”.', []],
    ['infinity', 'infinity', '“infinity” can only be an argument of a function.', []],
    ['2 * infinity', 'infinity', '“infinity” can only be an argument of a function.', []],
    [
      'infinity = 1',
      'infinity =',
      'There is no cell named “infinity” to compare with. To give a value a name, write the name in the cell’s field; the formula is only what follows “=”.',
      ['1'],
    ],
    ['profile = wide', 'wide', 'There is no cell named “wide”. Did you mean “width”?', ['profile = "wide"']],
    ['profile != portrait', 'portrait', 'There is no cell named “portrait”.', ['profile != "portrait"']],
    ['max(wide, 1)', 'wide', 'There is no cell named “wide”. Did you mean “width”?', ['max(width, 1 mm)']],
    ['2 * wide', 'wide', 'There is no cell named “wide”. Did you mean “width”?', ['2 * width']],
    ['-wide', 'wide', 'There is no cell named “wide”. Did you mean “width”?', ['-width']],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes)
  })
})

describe('a list', () => {
  test('holds values of one kind', () => {
    expect(shown('{12 mm, 20 mm, 36 mm}')).toBe('{12 mm, 20 mm, 36 mm}')
    expectRefused('{1 mm, 2}', '2', ['{1 mm, 2 mm}'])
    expectRefused('{}', '{}', [])
    expectRefused('{1, lit}', 'lit', [])
  })

  test.each([
    [
      '{1, 2 mm}',
      '2 mm',
      'The values of a list are of one kind: the first is a plain number, this is a length.',
      ['{1 mm, 2 mm}'],
    ],
    [
      '{1 mm, 2}',
      '2',
      'The values of a list are of one kind: the first is a length, this is a plain number.',
      ['{1 mm, 2 mm}'],
    ],
    ['{1 mm, 2 mm, 3 s}', '3 s', 'The values of a list are of one kind: the first is a length, this is a time.', []],
    ['{1, lit}', 'lit', 'The values of a list are of one kind: the first is a plain number, this is yes or no.', []],
    ['{lit, profile}', 'profile', 'The values of a list are of one kind: the first is yes or no, this is text.', []],
    [
      '{sensor, 1 mm}',
      '1 mm',
      'The values of a list are of one kind: the first is a size, this is a length.',
      ['{sensor.width, 1 mm}', '{sensor.height, 1 mm}'],
    ],
    [
      '{sensor.width, sensor}',
      'sensor',
      'The values of a list are of one kind: the first is a length, this is a size.',
      ['{sensor.width, sensor.width}', '{sensor.width, sensor.height}'],
    ],
    ['{1, nothing}', 'nothing', 'There is no cell named “nothing”.', []],
    ['{}', '{}', 'A list has at least one value.', []],
    [
      '{12 EV, 1 stop}',
      '1 stop',
      'An exposure value and a difference in stops cannot be values of one list.',
      ['{12 EV, 1 EV}', '{12 stop, 1 stop}'],
    ],
    [
      '{1 stop, 2 stop, 12 EV}',
      '12 EV',
      'An exposure value and a difference in stops cannot be values of one list.',
      ['{1 stop, 2 stop, 12 stop}'],
    ],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes)
  })
})

describe('a record’s part', () => {
  test('is named after a point', () => {
    expect(shown('sensor.width / 2')).toBe('18 mm')
    expectRefused('sensor.widht', 'widht', ['sensor.width'])
    expectRefused('width.length', '.length', ['width'])
    expectRefused('sensor.constructor', 'constructor', ['sensor.width', 'sensor.height'])
    expectRefused('sensor.__proto__', '__proto__', ['sensor.width', 'sensor.height'])
    expectRefused('sensor + 1 mm', 'sensor', ['sensor.width + 1 mm', 'sensor.height + 1 mm'])
  })

  test.each([
    ['nothing.width', 'nothing', 'There is no cell named “nothing”.', []],
    ['sensor.widht', 'widht', 'A size has no part “widht”. Its parts are width and height.', ['sensor.width']],
    [
      'sensor.depth',
      'depth',
      'A size has no part “depth”. Its parts are width and height.',
      ['sensor.width', 'sensor.height'],
    ],
    ['sensor.w', 'w', 'A size has no part “w”. Its parts are width and height.', ['sensor.width', 'sensor.height']],
    ['width.length', '.length', 'Only a record has parts; this is a length.', ['width']],
    ['x.y + 1', '.y', 'Only a record has parts; this is a plain number.', ['x + 1']],
    ['lit.width', '.width', 'Only a record has parts; this is yes or no.', ['lit']],
    ['2.width', '2.', 'There is no digit after the decimal point of “2.”.', ['2.0 * width']],
    ['2. width', '2.', 'There is no digit after the decimal point of “2.”.', ['2.0 * width']],
    ['2.5.width', '2.5.', 'There is no digit after the decimal point of “2.5.”.', []],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes)
  })
})
