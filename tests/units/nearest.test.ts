import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nearest } from '../../src/units/index.ts'
import { inOtherCase } from '../../src/units/nearest.ts'

describe('the word that is meant', () => {
  test.each([
    // One slip in words of two letters or fewer, two up to five, three beyond.
    ['mn', ['mm'], 'mm'],
    ['xy', ['mm'], undefined],
    ['a', ['mm'], undefined],
    ['meter', ['metre'], 'metre'],
    ['abcde', ['abxye'], 'abxye'],
    ['abcde', ['abxyz'], undefined],
    ['abcdef', ['abcxyz'], 'abcxyz'],
    ['abcdef', ['abwxyz'], undefined],
    ['width', ['wdith'], 'wdith'],
    // Letters left out, or put in, at either end.
    ['aperture', ['perture'], 'perture'],
    ['perture', ['aperture'], 'aperture'],
    ['lens', ['lenses'], 'lenses'],
    ['lens', ['lenses_'], undefined],
    ['mn', ['mnab'], undefined],
    ['a', ['ab'], 'ab'],
    ['', ['a'], undefined],
    ['a', [], undefined],
  ] as const)('%s among %j is %s', (word, known, meant) => {
    expect(nearest(word, known)).toBe(meant)
  })

  test('is the nearest, the first of several equally near', () => {
    expect(nearest('sheat', ['shot', 'sheet', 'cheat'])).toBe('sheet')
    expect(nearest('sheat', ['cheat', 'sheet'])).toBe('cheat')
    expect(nearest('sheet', ['sheat', 'sheet'])).toBe('sheet')
  })

  test('counts two neighbours changed over as one slip, as it does one letter', () => {
    // One slip is all that a word of two letters is allowed.
    expect(nearest('xp', ['px'])).toBe('px')
    expect(nearest('xp', ['py'])).toBeUndefined()
    expect(nearest('xpa', ['pxa'])).toBe('pxa')
    // Two pairs changed over are two slips of a word of five.
    expect(nearest('badce', ['abcde'])).toBe('abcde')
    expect(nearest('acbd', ['abcd', 'axbd'])).toBe('abcd')
    expect(nearest('abdc', ['abdx', 'abcd'])).toBe('abdx')
    expect(nearest('abcdefg', ['abdcegf'])).toBe('abdcegf')
  })

  test('may differ in capitals alone, however many', () => {
    expect(nearest('APERTURE', ['width', 'aperture'])).toBe('aperture')
    expect(inOtherCase('iso', ['mm', 'ISO', 'Iso'])).toBe('ISO')
    expect(inOtherCase('iso', ['isos', 'is'])).toBeUndefined()
  })

  test('is not looked for where the word is longer than any', () => {
    const long = 'a'.repeat(64)
    expect(nearest(long, [`${long}b`])).toBe(`${long}b`)
    expect(nearest(`${long}a`, [long])).toBeUndefined()
  })

  test('is itself where it is known, and any known word with one letter less is found again', () => {
    const word = fc.stringMatching(/^[a-z]{4,12}$/)
    fc.assert(
      fc.property(word, word, fc.nat(), (one, other, place) => {
        expect(nearest(one, [other, one])).toBe(one)
        const at = place % one.length
        expect(nearest(one.slice(0, at) + one.slice(at + 1), [one])).toBe(one)
      }),
    )
  })
})
