import { describe, expect, test } from 'vitest'
import { clip, ReadError, readPart, refuseLong } from '../../src/units/read-error.ts'

function refused(attempt: () => unknown): unknown {
  try {
    attempt()
  } catch (error) {
    return error
  }
  throw new Error('It was not refused.')
}

describe('a text longer than any quantity', () => {
  test('is refused from its thousandth character on, and one of a thousand is not', () => {
    expect(() => refuseLong('1'.repeat(1000))).not.toThrow()
    const error = refused(() => refuseLong('1'.repeat(1003)))
    expect(error).toBeInstanceOf(ReadError)
    expect(error).toMatchObject({ from: 1000, to: 1003, message: expect.stringMatching(/1000 characters/) })
  })

  test('is quoted by its first forty characters', () => {
    expect(clip('a'.repeat(40))).toBe('a'.repeat(40))
    expect(clip(`${'a'.repeat(40)}b`)).toBe(`${'a'.repeat(40)}…`)
  })
})

describe('a part of a text', () => {
  test('is read alone', () => {
    expect(readPart('12 x 34', 5, 7, Number)).toBe(34)
  })

  test('has its error placed and fixed in the whole', () => {
    const fixed = refused(() =>
      readPart('12 x 34 m', 5, 7, () => {
        throw new ReadError('no', 0, 2, '35')
      }),
    )
    expect(fixed).toMatchObject({ message: 'no', from: 5, to: 7, fix: '12 x 35 m' })
    const unfixed = refused(() =>
      readPart('12 x 34 m', 5, 7, () => {
        throw new ReadError('no', 1, 2)
      }),
    )
    expect(unfixed).toMatchObject({ from: 6, to: 7, fix: undefined })
  })

  test('lets any other error through as it is', () => {
    const other = new TypeError('other')
    expect(
      refused(() =>
        readPart('12', 0, 2, () => {
          throw other
        }),
      ),
    ).toBe(other)
  })
})
