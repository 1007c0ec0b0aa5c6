import type { SheetWords } from './sheet-words';

/** The sheet of the card in Spanish. */
export const SHEET_WORDS_ES: SheetWords = {
  language: 'es',
  title: 'Tarjeta de calibración',
  subtitle: 'Va alrededor del dedo gordo en cada foto, para que la foto se pueda medir en milímetros.',
  printAndCut: [
    {
      heading: '1  Imprimir',
      lines: ['Al 100 % o “tamaño real”, nunca “ajustar a la', 'página”. Papel blanco, mate y firme. No la', 'plastifique ni fotocopie: imprima otra.'],
    },
    {
      heading: '2  Comprobar el tamaño y cortar',
      lines: ['Corte por la línea exterior. Después corte el', 'hueco para el dedo por una línea: S, M o L.', 'Elija la más estrecha que rodee el dedo sin', 'tocar el lado dolorido.'],
    },
  ],
  check: [
    {
      heading: '¿El tamaño es correcto?',
      lines: [
        'Ponga una tarjeta de banco en este dibujo.',
        'Si se ve una línea fina por igual alrededor,',
        'el tamaño es correcto.',
        '',
        'O ponga una regla sobre la barra de arriba.',
        'Debe medir 50 mm.',
        '',
        'Mide  __________ mm',
        '',
        'Diga lo que vio con la primera foto. Hasta',
        'entonces las medidas son menos seguras.',
      ],
    },
  ],
  lay: [
    {
      heading: '3  Colocarla alrededor del dedo',
      lines: ['La tarjeta queda a la altura de la uña, plana,', 'lo impreso hacia arriba; un paño debajo', 'ayuda. Nada tapa los cuadros negros. No', 'toca la herida. Sucia o doblada: otra nueva.'],
    },
    { heading: '4  Hacer la foto', lines: ['Desde arriba, a unos 25 cm, con luz pareja', 'de día o de lámpara, sin flash.'] },
  ],
  figure: { above: 'desde arriba', side: 'de lado', distance: '25 cm' },
  caution: {
    heading: 'Esta tarjeta ayuda a medir. No dice qué pasa, y ningún resultado sustituye a una persona que mira.',
    lines: [
      'Más dolor, enrojecimiento que se extiende, pus, sangre que no para, fiebre o algo que le preocupe: llame enseguida a su',
      'clínica, diga lo que diga la medida. En una emergencia llame al número de emergencias local (112 o 911).',
    ],
  },
  clinicLine: (clinic) => `Mi clínica: ${clinic?.name ?? '_'.repeat(38)}     Teléfono: ${clinic?.phone ?? '_'.repeat(30)}`,
};
