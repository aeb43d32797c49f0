import { expect, test } from 'vitest'
import allowed from './allowed.json' with { type: 'json' }
import { bannedIn } from './banned.ts'
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
const READ = new Set(['title', 'label', 'hint', 'message', 'holds', 'passes', 'text', 'about', 'answer', 'measure'])

function* readTexts(value: unknown, key = ''): Generator<string> {
  if (typeof value === 'string') {
    if (READ.has(key)) yield value
  } else if (Array.isArray(value)) for (const one of value) yield* readTexts(one, key)
  else if (value !== null && typeof value === 'object')
    for (const [name, one] of Object.entries(value)) yield* readTexts(one, name)
}

/** How many retired words each template may still have; a number here may only become smaller. */
const ALLOWED: Readonly<Record<string, number>> = allowed

const TEMPLATES = import.meta.glob<object>('../../templates/*.json', { import: 'default', eager: true })
const templates = Object.entries(TEMPLATES).map(([path, json]) => [path.replace('../../', ''), json] as const)

test.each(templates)('%s uses no retired word beyond those allowed', (name, json) => {
  const found = [...readTexts(json)].flatMap((text) =>
    bannedIn(text).map(({ instead }) => `“${text}” (now: ${instead})`),
  )
  if (found.length > (ALLOWED[name] ?? 0)) expect(found).toEqual([])
})

test('the allow-list names only templates that exist', () => {
  const names = new Set(templates.map(([name]) => name))
  expect(Object.keys(ALLOWED).filter((name) => !names.has(name))).toEqual([])
})
