export const hintWords = {
  enterKey: 'or press Enter',
}
