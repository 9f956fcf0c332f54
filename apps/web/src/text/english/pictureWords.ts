/** The words of the picture for the customer. */
export const pictureWords = {
  title: 'In a photo of the window',
  about:
    'To show before anything is cut: the panel as it will look, by its colour and how open its cloth is. The photo stays in this browser and is not kept with the job.',
  choose: 'Photo of the window, from outside',
  unreadable: (name: string) => `${name} is not a picture this browser can show. Use a JPEG or PNG photo.`,
  inside: 'The photo was taken from inside',
  drag: 'Drag the four corners until the dashed line lies on the edge of the window. Arrow keys move a corner too.',
  photoOf: (name: string) => `Photo of ${name}`,
  panelIn: (name: string) => `The finished panel on ${name}`,
  corners: ['Bottom left corner', 'Bottom right corner', 'Top right corner', 'Top left corner'],
  handle: 'handle to drag',
  dent: 'The corners do not go round the window: two of them have changed places, or three lie in a line. Drag them apart.',
  save: 'Save the picture',
  fileName: (name: string) => `${name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').trim() || 'window'}.jpg`,
};
