export const templateWords = {
  notFetched: 'This job could not be loaded. Check the network and reload the page, or start with an empty sheet.',
}
