import { build } from './build.mjs'
import { install } from './install.mjs'
import { serve } from './serve.mjs'

const WANTED = Number(process.env.PORT || 5190)
const TRIES = 20

/** Serves on the requested port, or the next free one. */
async function serveNear(root) {
  for (let port = WANTED; ; port++) {
    try {
      return await serve({ root, port, host: process.env.HOST || undefined })
    } catch (error) {
      if (error.code !== 'EADDRINUSE' || port === WANTED + TRIES) throw error
    }
  }
}

install()
try {
  const { dist } = await build()
  const { url } = await serveNear(dist)
  console.log(`Evenfield is at ${url} (Ctrl+C stops it).`)
} catch (error) {
  console.error(error)
  console.error('Evenfield could not be started; the lines above say why.')
  process.exit(1)
}
