/** Read on Licences. */
export const LICENCES = {
  title: 'Licences',
  ownLicence:
    'Movewright and the C sources that it exports are under the MIT licence: use, change and ship them, with the notice kept. No warranty.',
  toGallery: 'Gallery: the parts this app is drawn with',
  packages: 'Packages inside the app',
  noText: 'The package gives no text.',
}
