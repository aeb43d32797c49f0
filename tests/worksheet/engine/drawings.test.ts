import { expect, test } from 'vitest'
import { given, result, sheetOf } from '../make.ts'

test('a drawing gets what computes, and says of the rest why it does not', () => {
  const sheet = sheetOf([
    given('a', '100 mm'),
    given('w', '', { unit: 'mm' }),
    result('broken', 'a / 0'),
    {
      kind: 'drawing',
      id: 'd',
      drawing: 'set-up',
      from: { one: 'a * 2', two: 'w', three: 'broken', four: 'a + 1 s', five: '', six: '1/0', constructor: 'a' },
    },
  ])
  const { values, missing } = sheet.drawing('d')
  expect(values).toEqual({ one: 0.2, constructor: 0.1 })
  expect(missing).toEqual({
    two: 'needs w',
    three: 'needs broken',
    four: expect.stringMatching(/cannot be added/),
    six: 'Division by zero.',
  })
})
