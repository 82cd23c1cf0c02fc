/** Texts that a firmware bundle is made of, as `makeFirmwareBundle` takes them. */
export interface FirmwareSources {
  coreFiles: Record<string, string>
  templateFiles: Record<string, string>
}

/**
 * Loads the C sources and templates, which the build packs into a chunk of their own: they are
 * needed for an export only.
 */
export async function loadFirmwareSources(): Promise<FirmwareSources> {
  const { CORE_FILES, TEMPLATE_FILES } = await import('./firmware-texts')
  return {
    coreFiles: withoutPrefix(CORE_FILES, '../core/'),
    templateFiles: withoutPrefix(TEMPLATE_FILES, '../shared/firmware/templates/'),
  }
}

function withoutPrefix(files: Record<string, string>, prefix: string): Record<string, string> {
  return Object.fromEntries(
    Object.entries(files).map(([path, text]) => [path.slice(prefix.length), text]),
  )
}
