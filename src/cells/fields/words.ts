/** The words of the fields in Build. */
export const fieldsWords = {
  name: 'Name',
}
