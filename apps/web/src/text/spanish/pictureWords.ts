import type { Words } from '../words.ts';

/** The words of the picture for the customer, in Spanish. */
export const pictureWords: Words['picture'] = {
  title: 'En una foto de la ventana',
  about:
    'Para enseñar antes de cortar nada: el panel como se verá, por su color y lo abierta que es su tela. La foto se queda en este navegador y no se guarda con el trabajo.',
  choose: 'Foto de la ventana, por fuera',
  unreadable: (name) =>
    `«${name}» no es una imagen que este navegador pueda mostrar. Use una foto JPEG o PNG.`,
  inside: 'La foto se hizo desde dentro',
  drag: 'Arrastre las cuatro esquinas hasta que la línea discontinua quede en el borde de la ventana. Las flechas también mueven una esquina.',
  photoOf: (name) => `Foto de ${name}`,
  panelIn: (name) => `El panel terminado en ${name}`,
  corners: [
    'Esquina de abajo a la izquierda',
    'Esquina de abajo a la derecha',
    'Esquina de arriba a la derecha',
    'Esquina de arriba a la izquierda',
  ],
  handle: 'tirador para arrastrar',
  dent: 'Las esquinas no rodean la ventana: dos están cambiadas, o tres quedan en línea. Sepárelas.',
  save: 'Guardar la imagen',
  fileName: (name) => `${name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').trim() || 'ventana'}.jpg`,
};
