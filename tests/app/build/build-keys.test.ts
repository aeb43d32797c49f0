import { expect, test } from 'vitest'
import { ADDING } from '../../../src/app/build/build-keys.ts'
import { keysWords } from '../../../src/app/keys/words.ts'

test('the list of keys names every letter that adds a cell, in their order', () => {
  const [, keys] = keysWords.groups.find(([title]) => title === 'In Build, on a cell') ?? []
  const letters = keys?.flatMap(([pressed, effect]) =>
    /^[A-Z]( [A-Z])*$/.test(pressed) && effect.startsWith('adds') ? pressed.split(' ') : [],
  )
  expect(letters).toEqual(Object.keys(ADDING).map((letter) => letter.toUpperCase()))
})
