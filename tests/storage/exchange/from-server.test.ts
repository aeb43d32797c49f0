import { afterEach, expect, test, vi } from 'vitest'
import { FileError } from '../../../src/storage/exchange/file.ts'
import { fromServer } from '../../../src/storage/exchange/from-server.ts'
import { SHEET } from '../sheets.ts'

const BASE = 'https://studio.example/evenfield/'

afterEach(() => vi.unstubAllGlobals())

/** A server that gives the same answer to everything, and what it was asked for. */
function serving(answer: () => Response): string[] {
  const asked: string[] = []
  vi.stubGlobal('fetch', async (address: URL) => {
    asked.push(address.href)
    return answer()
  })
  return asked
}

test('a sheet in a folder beside the app opens', async () => {
  const asked = serving(() => new Response(JSON.stringify(SHEET)))
  expect(await fromServer('sheets/map.evenfield.json', BASE)).toEqual(SHEET)
  expect(asked).toEqual([`${BASE}sheets/map.evenfield.json`])
})

test.each([
  'https://elsewhere.example/a.json',
  '//elsewhere.example/a.json',
  'data:application/json,{}',
  'file:///etc/passwd',
  'http://[',
  'blob:x',
])('%s is not asked for', async (path) => {
  const asked = serving(() => new Response(JSON.stringify(SHEET)))
  await expect(fromServer(path, BASE)).rejects.toThrow(/Only sheets on the same server/)
  expect(asked).toEqual([])
})

test('what is missing, silent or no worksheet is reported in sentences', async () => {
  serving(() => new Response('', { status: 404 }))
  await expect(fromServer('sheets/a.json', BASE)).rejects.toThrow(
    'a.json is not on the server, or it may not be read (404).',
  )
  serving(() => {
    throw new TypeError('fetch failed')
  })
  await expect(fromServer('sheets/a.json', BASE)).rejects.toThrow(/could not be loaded/)
  serving(() => new Response('<!doctype html>'))
  await expect(fromServer('sheets/a.json', BASE)).rejects.toThrow(FileError)
})
