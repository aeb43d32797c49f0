import { createReadStream, readFileSync } from 'node:fs'
import { realpath, stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, resolve, sep } from 'node:path'
import { pipeline } from 'node:stream'
import { createGzip } from 'node:zlib'

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
}

/** What is text packs to a third; pictures and fonts are packed already. */
const PACKS = /^text\/|json|javascript|svg/

/** The policy the built page carries itself, so that header and page never differ. */
function policyOf(root) {
  try {
    return /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(
      readFileSync(join(root, 'index.html'), 'utf8'),
    )?.[1]
  } catch {
    return undefined
  }
}

/** The file a request's path names, or undefined where it would leave the folder or holds a hidden name. */
export function fileFor(root, base, url) {
  let path
  try {
    path = decodeURIComponent(url.split(/[?#]/, 1)[0])
  } catch {
    return undefined
  }
  if (!path.startsWith(base) || /[\0\\]/.test(path)) return undefined
  const rest = path.slice(base.length)
  if (rest.split('/').some((part) => part.startsWith('.'))) return undefined
  const file = resolve(root, rest === '' || rest.endsWith('/') ? `${rest}index.html` : rest)
  return file.startsWith(resolve(root) + sep) ? file : undefined
}

/** Whether a file lies in the folder once links are followed. */
async function isInside(root, file) {
  const [folder, real] = await Promise.all([realpath(root), realpath(file)]).catch(() => ['', undefined])
  return real?.startsWith(folder + sep) ?? false
}

/**
 * Serves a folder of static files. `base` is the sub-path it answers under, with a slash at both ends.
 * Resolves to the address and a way to stop; rejects where the port is taken. Port 0 takes any free one.
 */
export function serve({ root, port = 0, host = '127.0.0.1', base = '/' }) {
  const policy = policyOf(root)
  const headers = {
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    // A page's own tag cannot say who may frame it; a header can.
    ...(policy ? { 'Content-Security-Policy': `${policy}; frame-ancestors 'none'` } : {}),
  }
  const server = createServer(async (request, response) => {
    const refuse = (status, text) => {
      response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' })
      response.end(request.method === 'HEAD' ? undefined : `${text}\n`)
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Only GET and HEAD are answered.')
    const file = fileFor(root, base, request.url ?? '')
    const found = file && (await stat(file).catch(() => undefined))
    if (!found?.isFile() || !(await isInside(root, file))) return refuse(404, 'There is no such page.')
    const type = TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream'
    const named = file.startsWith(join(resolve(root), 'assets') + sep)
    const isPacked = PACKS.test(type) && /\bgzip\b/.test(request.headers['accept-encoding'] ?? '')
    response.writeHead(200, {
      ...headers,
      'Content-Type': type,
      ...(isPacked ? { 'Content-Encoding': 'gzip' } : { 'Content-Length': found.size }),
      Vary: 'Accept-Encoding',
      // A file in assets has a hash of its content in its name.
      'Cache-Control': named ? 'public, max-age=31536000, immutable' : 'no-cache',
    })
    if (request.method === 'HEAD') return response.end()
    pipeline(createReadStream(file), ...(isPacked ? [createGzip()] : []), response, () => {})
  })
  return new Promise((settle, reject) => {
    server.once('error', reject)
    server.listen(port, host, () => {
      const { port: taken } = server.address()
      const name = host === '127.0.0.1' || host === '0.0.0.0' ? 'localhost' : host
      settle({
        url: `http://${name}:${taken}${base}`,
        port: taken,
        close: () =>
          new Promise((done) => {
            server.close(() => done())
            server.closeAllConnections()
          }),
      })
    })
  })
}
