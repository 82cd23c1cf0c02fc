/** Why the program of the core did not arrive. */
export const CORE_PROGRAM = {
  altered: (bytes: number) =>
    `The recogniser's program is altered or cut short (${bytes} bytes), so it was not started. Your takes are untouched. Reload while online; a host must hand out .wasm files as they are.`,
  /** @param httpStatus null where no answer came or it broke off */
  missing: (httpStatus: number | null) =>
    `The recogniser's program could not be loaded: ${httpStatus === null ? 'the network is away or the transfer broke off' : `the host answered ${httpStatus}`}. Your takes are untouched. Reload while online; on a host of your own, upload the whole folder again.`,
}
