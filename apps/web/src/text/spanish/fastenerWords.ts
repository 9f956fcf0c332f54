/** Words of steel strips and fasteners in the catalogue, in Spanish. */
export const fastenerWords = {
  stripWidth: 'Ancho de la pletina',
  fastenerKind: 'Clase',
  fastenerKinds: {
    snap: 'Botón a presión',
    hookAndLoop: 'Cierre de gancho y bucle',
    turnButton: 'Cierre giratorio',
    suctionCup: 'Ventosa',
  },
  spacing: 'Separaciones en un borde, no más de',
  beyond: 'Tela más allá de la línea trazada',
  inset: 'Centro, desde el borde terminado',
  face: 'Ancho de su cara',
  fixings: 'Tornillos, remaches o postes por cada uno',
  laid: 'Puesto',
  laids: { run: 'todo a lo largo de los bordes', pads: 'un trozo en cada punto' },
  padLength: 'Largo de un trozo',
  cupDiameter: 'Diámetro de la ventosa',
  strength: 'Cuánto sujeta',
  strengths: { unknown: 'aún no se sabe', shop: 'probado por el taller', source: 'de una fuente' },
  strengthAbout:
    'Tire de uno con un dinamómetro, recto y a lo largo, varias veces; anote el menor y el mayor valor. Para gancho y bucle: por cada mm de largo.',
  strengthUnknown:
    'Hasta que el taller lo pruebe no se dice ningún margen (una ventosa se calcula por la presión del aire).',
  pullLow: 'Recto, el menor, N',
  pullHigh: 'Recto, el mayor, N',
  alongLow: 'A lo largo de la superficie, el menor, N',
  alongHigh: 'A lo largo de la superficie, el mayor, N',
  tested: 'Cómo y cuándo se probó',
  strengthSource: 'Fuente',
};
