export const templateWords = {
  notFetched: 'This template could not be loaded. Check the network and reload the page, or start with an empty sheet.',
}
