/** Words of the sides of the vehicle, vessel or building, in English. */
export const elevationWords = {
  title: 'Elevations',
  link: 'Elevations',
  empty:
    'No side is drawn yet. Add one, say how long and high it is, and put the openings in place: then what needs you shows where it is.',
  add: 'Add a side',
  newName: (n: number) => `Side ${n}`,
  name: 'Name of the side',
  width: 'Length of the side',
  height: 'Height of the side',
  how: 'Seen from outside. Drag an opening to its place, or choose it and press the arrow keys; Enter or a double press opens it. Nothing is worked out from here.',
  drawing: (side: string, count: number) =>
    count === 1 ? `${side} with 1 opening in place` : `${side} with ${count} openings in place`,
  placed: (opening: string, needs: boolean) => (needs ? `${opening}, needs you` : opening),
  free: 'On no side yet',
  place: (opening: string) => `Put ${opening} here`,
  takeOff: 'Take off this side',
  takeOffOf: (opening: string) => `Take off this side: ${opening}`,
  parts: 'Doors, wheels and the like',
  part: 'Shape',
  kinds: { box: 'rectangle', round: 'round' },
  addPart: 'Add a shape',
  removePart: (n: number) => `Remove shape ${n}`,
  photo: 'A photo to draw over',
  photoAbout:
    'Stretched to the side, and shown until the page is closed. It is not kept and leaves this machine for nowhere.',
  remove: 'Remove this side',
};
