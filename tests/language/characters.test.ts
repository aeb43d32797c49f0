import { describe, expect, test } from 'vitest'
import { applyFix } from '../../src/language/index.ts'
import { diagnosed, expectSaid, pointed } from './make.ts'

describe('signs that no formula has, and what is meant by them:', () => {
  test.each([
    ['=width', '=', 'A formula starts without “=”.', ['width']],
    ['  = width', '  = ', 'A formula starts without “=”.', ['width']],
    ['==width', '==', 'A formula starts without “=”.', ['width']],
    ['= ', '= ', 'A formula ends without “=”.', []],
    ['x;', ';', 'Arguments and the values of a list are separated by commas, not by “;”.', ['x']],
    ['max(1; 2)', ';', 'Arguments and the values of a list are separated by commas, not by “;”.', ['max(1, 2)']],
    ['2–1', '–', 'A long dash is not a minus sign. Write “-”.', ['2-1']],
    ['2—1', '—', 'A long dash is not a minus sign. Write “-”.', ['2-1']],
    ['2‒1', '‒', 'A long dash is not a minus sign. Write “-”.', ['2-1']],
    ['2 +- 1', '+-', 'Limits are written with “±”.', ['2 ± 1']],
    ['2 -+ 1', '-+', 'Limits are written with “±”.', ['2 ± 1']],
    [
      '1,5',
      '1,5',
      '“1,5” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1.5'],
    ],
    [
      '1,5 mm',
      '1,5',
      '“1,5” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1.5 mm'],
    ],
    [
      '1,200',
      '1,200',
      '“1,200” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1.200', '1200'],
    ],
    [
      '1,200 mm',
      '1,200',
      '“1,200” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1.200 mm', '1200 mm'],
    ],
    [
      '1,200,000',
      '1,200,000',
      '“1,200,000” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1200000'],
    ],
    [
      '0,200',
      '0,200',
      '“0,200” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['0.200'],
    ],
    [
      '01,200',
      '01,200',
      '“01,200” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['01.200'],
    ],
    [
      '1234,567',
      '1234,567',
      '“1234,567” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['1234.567'],
    ],
    [
      '1,2,3',
      '1,2,3',
      '“1,2,3” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      [],
    ],
    [
      '{1,2,3}',
      '1,2,3',
      '“1,2,3” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['{1, 2, 3}'],
    ],
    [
      '(1,2)',
      '1,2',
      '“1,2” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['(1.2)'],
    ],
    [
      'max(1,5)',
      '1,5',
      '“1,5” could be a decimal comma or a list. Write numbers with a decimal point; in a list, put a space after each comma.',
      ['max(1.5)', 'max(1, 5)'],
    ],
    ['x1,5', ',', '“,” does not fit here.', []],
    ['1.5,5', ',', '“,” does not fit here.', []],
    ['width\u200b + 1', '\u200b', 'There is an invisible character here (U+200B).', ['width + 1 mm']],
    ['\u200ewidth', '\u200e', 'There is an invisible character here (U+200E).', ['width']],
    ['width +\ufeff 1', '\ufeff', 'There is an invisible character here (U+FEFF).', ['width + 1 mm']],
    ["1'000 mm", "1'000", "“1'000” is one number: write its digits together, or with thin spaces.", ['1000 mm']],
    ['1’000 mm', '1’000', '“1’000” is one number: write its digits together, or with thin spaces.', ['1000 mm']],
    ['1_000 mm', '1_000', '“1_000” is one number: write its digits together, or with thin spaces.', ['1000 mm']],
    ["1'0000", "'", 'Feet are written “ft”.', ['1 ft * 0000']],
    [
      "12'345'678 mm",
      "12'345'678",
      "“12'345'678” is one number: write its digits together, or with thin spaces.",
      ['12345678 mm'],
    ],
    ["5' + 3 in", "'", 'Feet are written “ft”.', ['5 ft + 3 in']],
    [`5' 3"`, "'", 'Feet are written “ft”.', ['5 ft + 3 in']],
    [`5'3"`, "'", 'Feet are written “ft”.', ['5 ft + 3 in']],
    ["5 ' + 1 ft", " '", 'Feet are written “ft”.', ['5 ft + 1 ft']],
    ['5’ + 1 ft', '’', 'Feet are written “ft”.', ['5 ft + 1 ft']],
    ["5''", "''", 'Inches are written “in”.', ['5 in']],
    ['5 ”', ' ”', 'Inches are written “in”.', ['5 in']],
    ['12" + 1 in', '12"', 'Inches are written “in”.', ['12 in + 1 in']],
    ['5” + 1 in', '”', 'Inches are written “in”.', ['5 in + 1 in']],
    ['width =< 3 mm', '=<', 'At most and at least are written “<=” and “>=”.', ['width <= 3 mm']],
    ['width => 3 mm', '=>', 'At most and at least are written “<=” and “>=”.', ['width >= 3 mm']],
    ['x == 3', '==', 'Equality is written with one “=”.', ['x = 3']],
    ['x === 3', '===', 'Equality is written with one “=”.', ['x = 3']],
    ['x <> 3', '<>', '“Not equal” is written “!=” or “≠”.', ['x ≠ 3']],
    ['x ** 2', '**', 'A power is written with “^”.', ['x ^ 2']],
    ['|x|', '|x|', 'The absolute value is written “abs(…)”.', ['abs(x)']],
    ['|x - 3| + 1', '|x - 3|', 'The absolute value is written “abs(…)”.', ['abs(x - 3) + 1']],
    ['lit && lit', ' && ', 'Conditions are joined with “and”.', ['lit and lit']],
    ['lit&&lit', '&&', 'Conditions are joined with “and”.', ['lit and lit']],
    ['lit & lit', ' & ', 'Conditions are joined with “and”.', ['lit and lit']],
    ['lit || lit', ' || ', 'Conditions are joined with “or”.', ['lit or lit']],
    ['lit | lit', ' | ', 'Conditions are joined with “or”.', ['lit or lit']],
    ['!lit', '!', 'The opposite of a condition is written with “not”.', ['not lit']],
    ['! lit', '! ', 'The opposite of a condition is written with “not”.', ['not lit']],
    ['lit and !lit', '!', 'The opposite of a condition is written with “not”.', ['lit and not lit']],
    ['profile = “wide”', '“wide”', 'Text is written in straight double quotes.', ['profile = "wide"']],
    ['profile = ‘wide’', '‘wide’', 'Text is written in straight double quotes.', ['profile = "wide"']],
    ['profile = «wide»', '«wide»', 'Text is written in straight double quotes.', ['profile = "wide"']],
    ['profile = „wide“', '„wide“', 'Text is written in straight double quotes.', ['profile = "wide"']],
    ['profile = “wide', '“', 'Text is written in straight double quotes.', ['profile = "wide"']],
    ["profile = 'wide'", "'wide'", 'Text is written in straight double quotes.', ['profile = "wide"']],
    ['profile = wide”', '”', 'Text is written in straight double quotes.', ['profile = wide"']],
    ['√4', '√', 'A root is written “sqrt(…)”.', ['sqrt(4)']],
    ['√ 4', '√', 'A root is written “sqrt(…)”.', ['sqrt(4)']],
    ['√x', '√', 'A root is written “sqrt(…)”.', ['sqrt(x)']],
    ['√sensor.width', '√', 'A root is written “sqrt(…)”.', ['sqrt(sensor.width)']],
    ['√(x + 1)', '√', 'A root is written “sqrt(…)”.', ['sqrt(x + 1)']],
    ['√ (x)', '√', 'A root is written “sqrt(…)”.', ['sqrt(x)']],
    ['√4 mm^2', '√', 'A root is written “sqrt(…)”.', ['sqrt(4 mm^2)']],
    ['√4 mm²', '√', 'A root is written “sqrt(…)”.', ['sqrt(4 mm²)']],
    ['√-4', '√', 'A root is written “sqrt(…)”.', []],
    ['√', '√', 'A root is written “sqrt(…)”.', []],
    ['∛8', '∛', 'A root is written “cbrt(…)”.', ['cbrt(8)']],
    ['2√4', '√', 'A root is written “sqrt(…)”.', ['2 * sqrt(4)']],
    ['π', 'π', '“π” is written “pi”.', ['pi']],
    ['2π', 'π', '“π” is written “pi”.', ['2 * pi']],
    ['2 π', 'π', '“π” is written “pi”.', ['2 * pi']],
    ['π * 2', 'π', '“π” is written “pi”.', ['pi * 2']],
    ['π2', 'π', '“π” is written “pi”.', ['pi * 2']],
    ['π(2)', 'π', '“π” is written “pi”.', ['pi * (2)']],
    ['(2)π', 'π', '“π” is written “pi”.', ['(2) * pi']],
    ['sin(π)', 'π', '“π” is written “pi”.', ['sin(pi)']],
    ['π rad', 'π', '“π” is written “pi”.', ['pi * 1 rad']],
    ['2 * π', 'π', '“π” is written “pi”.', ['2 * pi']],
    ['½ in', '½', '“½” is written as a number with a decimal point, or as a fraction of a unit.', ['0.5 in']],
    ['1½ in', '1½', '“1½” is written as a number with a decimal point, or as a fraction of a unit.', ['1.5 in']],
    ['1 ½ in', '1 ½', '“1 ½” is written as a number with a decimal point, or as a fraction of a unit.', ['1.5 in']],
    ['⅓ stop', '⅓', '“⅓” is written as a number with a decimal point, or as a fraction of a unit.', ['1/3 stop']],
    [
      '1⅓ stop',
      '1⅓',
      '“1⅓” is written as a number with a decimal point, or as a fraction of a unit.',
      ['1 stop + 1/3 stop'],
    ],
    [
      '1 ⅓ stop',
      '1 ⅓',
      '“1 ⅓” is written as a number with a decimal point, or as a fraction of a unit.',
      ['1 stop + 1/3 stop'],
    ],
    ['¾', '¾', '“¾” is written as a number with a decimal point, or as a fraction of a unit.', ['0.75']],
    ['⅞ in', '⅞', '“⅞” is written as a number with a decimal point, or as a fraction of a unit.', ['0.875 in']],
    ['2⅔ mm', '2⅔', '“2⅔” is written as a number with a decimal point, or as a fraction of a unit.', ['2 mm + 2/3 mm']],
    ['x½', '½', '“½” does not fit here.', []],
    ['4 ⁄ 2', '⁄', '“⁄” is written “/” in a formula.', ['4 / 2']],
    ['4∕2', '∕', '“∕” is written “/” in a formula.', ['4/2']],
    ['4∗2', '∗', '“∗” is written “*” in a formula.', ['4*2']],
    ['4⋅2', '⋅', '“⋅” is written “*” in a formula.', ['4*2']],
    ['4 ∙ 2', '∙', '“∙” is written “*” in a formula.', ['4 * 2']],
    ['4 • 2', '•', '“•” is written “*” in a formula.', ['4 * 2']],
    ['4✕2', '✕', '“✕” is written “*” in a formula.', ['4*2']],
    ['4 ✖ 2', '✖', '“✖” is written “*” in a formula.', ['4 * 2']],
    ['4⨯2', '⨯', '“⨯” is written “*” in a formula.', ['4*2']],
    ['x ≦ 3', '≦', '“≦” is written “<=” in a formula.', ['x <= 3']],
    ['x ⩽ 3', '⩽', '“⩽” is written “<=” in a formula.', ['x <= 3']],
    ['x ≧ 3', '≧', '“≧” is written “>=” in a formula.', ['x >= 3']],
    ['x ⩾ 3', '⩾', '“⩾” is written “>=” in a formula.', ['x >= 3']],
    ['ƒ/8', 'ƒ', '“ƒ” is written “f” in a formula.', ['f/8']],
    ['１ + 1', '１', '“１” is written “1” in a formula.', ['1 + 1']],
    ['max(1， 2)', '，', '“，” is written “,” in a formula.', ['max(1, 2)']],
    ['x ＋ 1', '＋', '“＋” is written “+” in a formula.', ['x + 1']],
    [
      'profile = "a" = "–"',
      'profile = "a" = "–"',
      'Comparisons do not chain. Join two with “and”.',
      ['profile = "a" and "a" = "–"'],
    ],
    ['profile = “a – b”', '“a – b”', 'Text is written in straight double quotes.', ['profile = "a – b"']],
    ['sqrt(π * 2)', 'π', '“π” is written “pi”.', ['sqrt(pi * 2)']],
    ['2 * 3π', 'π', '“π” is written “pi”.', ['2 * 3 * pi']],
    ['profile = “a; – ½”', '“a; – ½”', 'Text is written in straight double quotes.', ['profile = "a; – ½"']],
    ['2 = 3;  ', ';', 'Arguments and the values of a list are separated by commas, not by “;”.', ['2 = 3']],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes)
  })

  test.each([
    'x != 3',
    '2 × −1',
    '5 − 3 · 2 ÷ 4',
    'x ≤ 3 and x ≥ 1',
    'profile = "a – b; 1,5 ½ √ ’ “ && "',
    '12\u202f000.5',
  ])('%s has none', (text) => {
    expect(diagnosed(text).map(({ severity }) => severity)).not.toContain('error')
  })

  /** Each place with what is said there, and the first fix. */
  const said = (text: string): readonly (readonly string[])[] =>
    diagnosed(text).map((one) => [
      pointed(text, one),
      one.message,
      ...one.fixes.slice(0, 1).map((fix) => applyFix(text, fix)),
    ])

  test('each is reported, and one fix puts all of them right', () => {
    expect(said('|x| + |m|')).toEqual([
      ['|x|', 'The absolute value is written “abs(…)”.', 'abs(x) + abs(m)'],
      ['|m|', 'The absolute value is written “abs(…)”.', 'abs(x) + abs(m)'],
    ])
    expect(said('（x － 1）').map(([at, , fixed]) => [at, fixed])).toEqual([
      ['（', '(x - 1)'],
      ['－', '(x - 1)'],
      ['）', '(x - 1)'],
    ])
    expect(said('max(1,5 mm; 2 mm)').map(([at, , fixed]) => [at, fixed])).toEqual([
      [';', 'max(1.5 mm, 2 mm)'],
      ['1,5', 'max(1.5 mm, 2 mm)'],
    ])
    expect(said('2 |x|').map(([at]) => at)).toEqual([' |', '|'])
  })

  test('one in a text of several is not, and is blamed on nothing else', () => {
    expect(said('profile = “1,5; a – b” or lit && lit').map(([at]) => at)).toEqual(['“1,5; a – b”', ' && '])
  })
})

test('a formula is missing where there is only space', () => {
  expect(said('')).toEqual([['', 'A formula is missing here.']])
  expect(said(' \t ')).toEqual([[' \t ', 'A formula is missing here.']])

  function said(text: string): unknown[] {
    return diagnosed(text).map((one) => [pointed(text, one), one.message])
  }
})

describe('a formula has limits', () => {
  test('of length', () => {
    const longest = `${'1 + '.repeat(499)}1234`
    expect(longest).toHaveLength(2000)
    expect(diagnosed(longest)).toEqual([])
    const longer = `${longest}56`
    expectSaid(
      longer,
      '56',
      'A formula has at most 2000 characters; this one has 2002. Split it over several cells.',
      [],
    )
  })

  test('of depth, outside of its texts', () => {
    const nested = (open: string, close: string, depth: number): string => open.repeat(depth) + 1 + close.repeat(depth)
    expect(diagnosed(nested('(', ')', 100))).toEqual([])
    for (const [open, close] of ['()', '[]', '{}'])
      expect(
        diagnosed(nested(open as string, close as string, 101)).map((one) => [one.from, one.to, one.message]),
      ).toEqual([[100, 203, 'Brackets go at most 100 deep. Split the formula over several cells.']])
    expect(diagnosed(`${'(1) + '.repeat(150)}1`)).toEqual([])
    expect(diagnosed(`profile = "${'('.repeat(150)}"`)).toEqual([])
  })
})
