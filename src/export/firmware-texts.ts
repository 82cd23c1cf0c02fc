/** Files as text, by path relative to this folder; the bundler reads them at build time. */
export const CORE_FILES = import.meta.glob<string>('../core/*.{c,h}', {
  query: '?raw',
  import: 'default',
  eager: true,
})

export const TEMPLATE_FILES = import.meta.glob<string>('../shared/firmware/templates/**/*', {
  query: '?raw',
  import: 'default',
  eager: true,
})
