import { createServer } from 'node:net'

/** A port of this machine that nothing listens on. */
export const freePort = () =>
  new Promise((settle) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address()
      server.close(() => settle(port))
    })
  })
