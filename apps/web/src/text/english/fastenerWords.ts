/** Words of steel strips and fasteners in the catalogue, in English. */
export const fastenerWords = {
  stripWidth: 'Width of the strip',
  fastenerKind: 'Kind',
  fastenerKinds: {
    snap: 'Snap',
    hookAndLoop: 'Hook and loop',
    turnButton: 'Turn button',
    suctionCup: 'Suction cup',
  },
  spacing: 'Gaps along an edge not over',
  beyond: 'Cloth beyond the traced line',
  inset: 'Middle, from the finished edge',
  face: 'Across its face',
  fixings: 'Screws, rivets or posts for each',
  laid: 'Laid',
  laids: { run: 'all along the edges', pads: 'a pad at each point' },
  padLength: 'Length of a pad',
  cupDiameter: 'Diameter of the cup',
  strength: 'How much it holds',
  strengths: { unknown: 'not known yet', shop: 'tried by the shop', source: 'from a source' },
  strengthAbout:
    'Pull one with a spring balance, straight off and along, several times; enter the least and the most. For hook and loop: for each mm of length.',
  strengthUnknown:
    'Until the shop has tried it, no margin is stated for it (a suction cup is reckoned from air pressure).',
  pullLow: 'Straight off, least, N',
  pullHigh: 'Straight off, most, N',
  alongLow: 'Along the surface, least, N',
  alongHigh: 'Along the surface, most, N',
  tested: 'How and when it was tried',
  strengthSource: 'Source',
};
