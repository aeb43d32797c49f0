import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Site, serve } from '../../scripts/serve.mjs'

const PAGE = `<!doctype html><meta http-equiv="Content-Security-Policy" content="default-src 'none'"><p>page`
let folder = ''
let site: Site

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenfield-serve-'))
  const root = join(folder, 'dist')
  mkdirSync(join(root, 'assets'), { recursive: true })
  writeFileSync(join(folder, 'secret.txt'), 'secret')
  writeFileSync(join(folder, 'dist-secret.txt'), 'secret')
  writeFileSync(join(root, '.hidden'), 'secret')
  writeFileSync(join(root, 'index.html'), PAGE)
  writeFileSync(join(root, 'assets/a.js'), 'export {}')
  writeFileSync(join(root, 'assets/a.woff2'), 'font')
  symlinkSync(join(folder, 'secret.txt'), join(root, 'link.txt'))
  symlinkSync(folder, join(root, 'folder'))
  symlinkSync(join(root, 'assets/a.js'), join(root, 'inside.js'))
  site = await serve({ root, base: '/sub/path/' })
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true })
})

interface Answer {
  readonly status: number
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly body: string
}

/** Asks with the path as it is; fetch would straighten out the dots first. */
const ask = (path: string, method = 'GET'): Promise<Answer> =>
  new Promise((settle, reject) => {
    request({ port: site.port, host: '127.0.0.1', path, method }, (response) => {
      let body = ''
      response.on('data', (part) => {
        body += part
      })
      response.on('end', () => settle({ status: response.statusCode ?? 0, headers: response.headers, body }))
    })
      .on('error', reject)
      .end()
  })

test('the page is served at the sub-path, with its own policy as a header', async () => {
  const { status, headers, body } = await ask('/sub/path/?query')
  expect(status).toBe(200)
  expect(body).toBe(PAGE)
  expect(headers['content-type']).toBe('text/html; charset=utf-8')
  expect(headers['content-security-policy']).toBe("default-src 'none'; frame-ancestors 'none'")
  expect(headers['x-content-type-options']).toBe('nosniff')
  expect(headers['cache-control']).toBe('no-cache')
})

test('files named for their content are saved by the browser, with their right type', async () => {
  const script = await ask('/sub/path/assets/a.js')
  expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8')
  expect(script.headers['cache-control']).toContain('immutable')
  expect((await ask('/sub/path/assets/a.woff2')).headers['content-type']).toBe('font/woff2')
})

test('text is packed for those who can unpack it, and nothing else is', async () => {
  const [page, font] = await Promise.all(
    ['', 'assets/a.woff2'].map((path) =>
      fetch(`http://127.0.0.1:${site.port}/sub/path/${path}`, { headers: { 'accept-encoding': 'br, gzip' } }),
    ),
  )
  expect([page?.headers.get('content-encoding'), await page?.text()]).toEqual(['gzip', PAGE])
  expect([font?.headers.get('content-encoding'), await font?.text()]).toEqual([null, 'font'])
  expect((await ask('/sub/path/')).headers['content-encoding']).toBeUndefined()
})

test('HEAD is answered without a body', async () => {
  const { status, headers, body } = await ask('/sub/path/', 'HEAD')
  expect([status, body, headers['content-length']]).toEqual([200, '', String(PAGE.length)])
})

test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is refused', async (method) => {
  expect((await ask('/sub/path/', method)).status).toBe(405)
})

test.each([
  '/',
  '/sub/path',
  '/sub/path/none.html',
  '/sub/path/assets/',
  '/sub/path/assets',
  '/sub/path/index.html/',
  '/sub/path/../secret.txt',
  '/sub/path/../dist-secret.txt',
  '/sub/path/..%2fsecret.txt',
  '/sub/path/%2e%2e/secret.txt',
  '/sub/path/assets/../../secret.txt',
  '/sub/path/..%5csecret.txt',
  '/sub/path//etc/passwd',
  '/sub/path/.hidden',
  '/sub/path/%00',
  '/sub/path/%zz',
])('%s is not there', async (path) => {
  const { status, body } = await ask(path)
  expect(status).toBe(404)
  expect(body).not.toContain('secret')
})

test('no link leads out of the folder', async () => {
  for (const path of ['link.txt', 'folder/secret.txt', 'folder/dist-secret.txt']) {
    const { status, body } = await ask(`/sub/path/${path}`)
    expect(status, path).toBe(404)
    expect(body).not.toContain('secret')
  }
  expect((await ask('/sub/path/inside.js')).body).toBe('export {}')
})
