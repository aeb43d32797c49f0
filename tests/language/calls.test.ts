import { describe, expect, test } from 'vitest'
import { computed, diagnosed, expectRefused, expectSaid } from './make.ts'

describe('a call', () => {
  test('takes arguments by place or by name, in any order, with the same result', () => {
    const value = computed('depth_of_field(f/11, 12 um, 1:4, 60 mm)').value
    expect(computed('depth_of_field(f/11, blur: 12 um, magnification: 1:4, focal: 60 mm)').value).toEqual(value)
    expect(computed('depth_of_field(focal: 60 mm, magnification: 1:4, blur: 12 um, aperture: f/11)').value).toEqual(
      value,
    )
    expect(computed('depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ratio: 1)').value).toEqual(value)
  })

  test.each([
    ['sqroot(4)', 'sqroot', ['sqrt(4)']],
    ['toString(4)', 'toString', []],
    ['sqrt', 'sqrt', []],
    ['sqrt(4, 5)', '5', ['sqrt(4)']],
    ['sqrt()', 'sqrt()', ['sqrt(x: x)']],
    ['min(infinity, 2)', 'infinity', []],
    ['infinity', 'infinity', []],
    ['max(1 mm, 2 s)', '2 s', []],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each([
    ['depth_of_field(f/11, blr: 12 um, magnification: 1:4, focal: 60 mm)', 'blr'],
    ['depth_of_field(f/11, blur: 12 um, blur: 12 um, magnification: 1:4)', 'blur: 12 um'],
    ['depth_of_field(aperture: f/11, 12 um, magnification: 1:4, focal: 60 mm)', '12 um'],
    ['depth_of_field(f/11, 12, 1:4, 60 mm)', '12'],
  ])('%s is wrong at “%s”', (text, at) => {
    expect(diagnosed(text).map((found) => text.slice(found.from, found.to))).toContain(at)
  })

  test('fixes a misspelt argument and a missing unit', () => {
    expectRefused('depth_of_field(f/11, 12, 1:4, 60 mm)', '12', ['depth_of_field(f/11, 12 mm, 1:4, 60 mm)'])
    expectRefused('depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ration: 1)', 'pupil_ration', [
      'depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ratio: 1)',
    ])
  })
})

describe('a call that does not fit says why:', () => {
  test.each([
    ['IF(x > 1, 2, 3)', 'IF', '“IF” is written “when(…)”.', ['when(x > 1, 2, 3)']],
    ['average(1, 2)', 'average', '“average” is written “mean(…)”.', ['mean(1, 2)']],
    ['AVERAGE(1 mm, 3 mm)', 'AVERAGE', '“AVERAGE” is written “mean(…)”.', ['mean(1 mm, 3 mm)']],
    ['pow(width + play, 2)', 'pow', '“pow” is written “a^b”.', ['(width + play)^2']],
    ['pow(x)', 'pow', 'There is no function “pow”. Did you mean “cos”?', ['cos(x)']],
    ['or(lit)', 'or', '“or” does not fit here.', []],
    ['OR(lit, x > 2, x < 1)', 'OR', '“OR” is written “a or b”.', ['(lit or (x > 2) or (x < 1))']],
    ['OR(lit)', 'OR', 'There is no function “OR”.', []],
    ['AND(lit, x > 2)', 'AND', '“AND” is written “a and b”.', ['(lit and (x > 2))']],
    ['NOT(lit)', 'NOT', '“NOT” is written “not”.', ['not (lit)']],
    ['NOT(lit, lit)', 'NOT', 'There is no function “NOT”.', []],
    ['Pi()', 'Pi()', '“Pi” is written “pi”.', ['pi']],
    ['PI(2)', 'PI', 'There is no function “PI”.', []],
    ['f11(2)', 'f11', 'The f-number is written “f/11”.', ['f/11 * (2)']],
    ['f5.65(2)', 'f5.65', 'The f-number is written “f/5.65”.', ['f/5.65 * (2)']],
    ['F8(2)', 'F8', 'The f-number is written “f/8”.', ['f/8 * (2)']],
    ['f5.6(2)', 'f5.6', 'The f-number is written “f/5.6”.', ['f/5.6 * (2)']],
    ['xf8(2)', 'xf8', 'There is no function “xf8”.', []],
    ['f8x(2)', 'f8x', 'There is no function “f8x”. Did you mean “max”?', ['max(2)']],
    [
      'width(2)',
      'width',
      '“width” is a cell, not a function. To multiply, write “*” before the bracket.',
      ['width * (2)'],
    ],
    ['x (2 + 3)', 'x', '“x” is a cell, not a function. To multiply, write “*” before the bracket.', ['x * (2 + 3)']],
    ['sqroot(4)', 'sqroot', 'There is no function “sqroot”. Did you mean “sqrt”?', ['sqrt(4)']],
    ['frobnicate(y: nothing)', 'frobnicate', 'There is no function “frobnicate”.', []],
    [
      'depth_of_field(aperture = f/8, 12 um, 1:4, 60 mm)',
      'aperture = f/8',
      'The value of an argument follows “:”, as in “aperture: …”.',
      [],
    ],
    ['sqrt(x = 4)', 'x = 4', 'The value of an argument follows “:”, as in “x: …”.', ['sqrt(x: 4)']],
    ['sqrt(x=4)', 'x=4', 'The value of an argument follows “:”, as in “x: …”.', ['sqrt(x: 4)']],
    ['sqrt(x  =  4)', 'x  =  4', 'The value of an argument follows “:”, as in “x: …”.', ['sqrt(x:  4)']],
    ['sqrt(y = 4)', 'y', 'There is no cell named “y”.', []],
    ['sqrt(2 * x = 4)', '2 * x = 4', '“x” of sqrt (0 or more) must be a number or a quantity; this is yes or no.', []],
    ['sqrt(x < 4)', 'x < 4', '“x” of sqrt (0 or more) must be a number or a quantity; this is yes or no.', []],
    [
      'when(lit, sensor, width)',
      'width',
      'The two outcomes of “when” differ in kind: a size and a length.',
      ['when(lit, sensor.width, width)', 'when(lit, sensor.height, width)'],
    ],
    [
      'when(lit, width, sensor)',
      'sensor',
      'The two outcomes of “when” differ in kind: a length and a size.',
      ['when(lit, width, sensor.width)', 'when(lit, width, sensor.height)'],
    ],
    [
      'when(lit, 12 EV, 1 stop)',
      '1 stop',
      'An exposure value and a difference in stops cannot be outcomes of one choice.',
      ['when(lit, 12 EV, 1 EV)', 'when(lit, 12 stop, 1 stop)'],
    ],
    ['when(nothing, 1, 2)', 'nothing', 'There is no cell named “nothing”.', []],
    [
      'when(lit, 1, width)',
      'width',
      'The two outcomes of “when” differ in kind: a plain number and a length.',
      ['when(lit, 1 mm, width)'],
    ],
    [
      'when(lit, 1 mm, 2)',
      '2',
      'The two outcomes of “when” differ in kind: a length and a plain number.',
      ['when(lit, 1 mm, 2 mm)'],
    ],
    ['when(x, 1, 2)', 'x', 'This is a plain number; a condition such as “a < b” is required here.', []],
    ['when(lit, 1)', 'when(lit, 1)', '“when” takes three arguments: when(condition, then, otherwise).', []],
    [
      'when(lit, 1, otherwise: 2)',
      'when(lit, 1, otherwise: 2)',
      '“when” takes three arguments: when(condition, then, otherwise).',
      [],
    ],
    ['max(infinity, 1 mm)', 'infinity', '“value” cannot be infinite.', []],
    ['max()', 'max()', 'max needs “value” (values of one kind, or a list of them) too: max(value, …).', []],
    ['sqrt()', 'sqrt()', 'sqrt needs “x” (0 or more) too: sqrt(x).', ['sqrt(x: x)']],
    ['sqrt(x: 1, x: 2)', 'x: 2', '“x” is given twice.', []],
    ['sqrt(1, x: 2)', 'x: 2', '“x” is given twice.', []],
    [
      'clamp(1, least: 0, 2, greatest: 3)',
      '2',
      'After the named argument “least”, name the others too: clamp(value, least, greatest).',
      [],
    ],
    [
      'clamp(1, greatest: 2, least: 0, most: 5)',
      'most',
      'clamp has no argument “most”. It takes clamp(value, least, greatest).',
      [],
    ],
    [
      'clamp(1)',
      'clamp(1)',
      'clamp needs “least” (its lower bound) and “greatest” (its upper bound) too: clamp(value, least, greatest).',
      [],
    ],
    ['clamp(1, 0)', 'clamp(1, 0)', 'clamp needs “greatest” (its upper bound) too: clamp(value, least, greatest).', []],
    [
      'clamp(1 mm, 0, 1 mm)',
      '0',
      '“least” of clamp (its lower bound) must be a length, as “value” is; this is a plain number.',
      ['clamp(1 mm, 0 mm, 1 mm)'],
    ],
    ['clamp(1, 0, 1, 2, 3)', '2, 3', 'clamp takes three arguments: clamp(value, least, greatest).', ['clamp(1, 0, 1)']],
    [
      'mean(1 mm, 2)',
      '2',
      '“value” of mean (values of one kind, or a list of them) must be a length, as “value” is; this is a plain number.',
      ['mean(1 mm, 2 mm)'],
    ],
    [
      'mean({1 mm}, 2)',
      '2',
      '“value” of mean (values of one kind, or a list of them) must be a length, as “value” is; this is a plain number.',
      ['mean({1 mm}, 2 mm)'],
    ],
    [
      'mean(sensor)',
      'sensor',
      '“value” of mean (values of one kind, or a list of them) must be a number or a quantity; this is a size.',
      ['mean(sensor.width)', 'mean(sensor.height)'],
    ],
    [
      'mean(12 EV, 1 stop)',
      '1 stop',
      'An exposure value and a difference in stops cannot be taken together.',
      ['mean(12 EV, 1 EV)'],
    ],
    [
      'mean(1 stop, 12 EV)',
      '12 EV',
      'An exposure value and a difference in stops cannot be taken together.',
      ['mean(1 stop, 12 stop)'],
    ],
    [
      'sum(lit)',
      'lit',
      '“list” of sum (values of one kind) must be a list of numbers or quantities; this is a list, each yes or no.',
      [],
    ],
    [
      'sum({lit})',
      '{lit}',
      '“list” of sum (values of one kind) must be a list of numbers or quantities; this is a list, each yes or no.',
      [],
    ],
    [
      'sum(12 EV)',
      '12 EV',
      '“list” of sum is a difference in stops; this is an exposure value, a level.',
      ['sum(12 stop)'],
    ],
    [
      'abs(12 EV)',
      '12 EV',
      '“x” of abs is a difference in stops; this is an exposure value, a level.',
      ['abs(12 stop)'],
    ],
    ['length(2)', 'length', '“length” is written “count(…)”.', ['count(2)']],
    [
      'min(lit, 1)',
      'lit',
      '“value” of min (values of one kind, or a list of them) must be a number or a quantity; this is yes or no.',
      [],
    ],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes)
  })

  test('what is wrong inside a call that is wrong too is said as well', () => {
    expect(diagnosed('sqroot(lit + 1)').map(({ message }) => message)).toEqual([
      'There is no function “sqroot”. Did you mean “sqrt”?',
      'This is yes or no; a number or a quantity is required here.',
    ])
    expect(diagnosed('max(lit + 1, 2 mm, 3 s)').map(({ message }) => message)).toEqual([
      'This is yes or no; a number or a quantity is required here.',
      '“value” of max (values of one kind, or a list of them) must be a length, as “value” is; this is a time.',
    ])
  })
})
