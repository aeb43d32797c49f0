import { expect, test } from 'vitest'
import { bannedIn, bannedInTemplate } from './banned.ts'
import { allMessages } from './catalogues.ts'
import { SAMPLES } from './samples.ts'

const catalogues = await allMessages()
const messages = [...catalogues.values()].flat()

test('every message of the app is as it was reviewed', async () => {
  const lines = messages.map(({ key, texts }) => [key, ...texts.map((text) => `    ${text}`)].join('\n'))
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('messages.txt')
})

test('every sample belongs to a message', () => {
  const keys = new Set(messages.map(({ key }) => key))
  expect(Object.keys(SAMPLES).filter((key) => !keys.has(key))).toEqual([])
})

test.each([...catalogues])('the catalogue of %s uses no retired word', (_, own) => {
  const found = own.flatMap(({ key, texts }) =>
    texts.flatMap((text) => bannedIn(text).map(({ instead }) => `${key}: “${text}” (now: ${instead})`)),
  )
  expect(found).toEqual([])
})

/** The keys of a worksheet's JSON whose texts a user reads. */
const READ = new Set([
  ...['title', 'label', 'hint', 'message', 'holds', 'passes', 'text', 'about', 'answer', 'measure', 'means', 'to'],
])

function* readTexts(value: unknown, key = ''): Generator<string> {
  if (typeof value === 'string') {
    if (READ.has(key)) yield value
  } else if (Array.isArray(value)) for (const one of value) yield* readTexts(one, key)
  else if (value !== null && typeof value === 'object')
    for (const [name, one] of Object.entries(value)) yield* readTexts(one, name)
}

const TEMPLATES = import.meta.glob<object>(['../../templates/*.json', '../../templates/parts/**/*.json'], {
  import: 'default',
  eager: true,
})
const templates = Object.entries(TEMPLATES).map(([path, json]) => [path.replace('../../', ''), json] as const)

/** A figure whose thousands a line may break apart, such as 65 535 with a plain space. */
const BREAKABLE = /\d \d{3}(?!\d)/

test('thousands are grouped by a space that does not break', () => {
  const texts = [
    ...messages.flatMap((message) => message.texts),
    ...templates.flatMap(([, json]) => [...readTexts(json)]),
  ]
  expect(texts.filter((text) => BREAKABLE.test(text))).toEqual([])
  expect('at most 65 535 pixels').toMatch(BREAKABLE)
})

test.each(templates)('%s uses no retired word', (_, json) => {
  const found = [...readTexts(json)].flatMap((text) =>
    bannedInTemplate(text).map(({ instead }) => `“${text}” (now: ${instead})`),
  )
  expect(found).toEqual([])
})
