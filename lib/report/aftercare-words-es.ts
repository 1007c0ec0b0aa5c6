import type { AftercareWords } from './aftercare-facts';

/**
 * The aftercare sheet in Spanish.
 * @example AFTERCARE_ES.bleeding.heading // 'Si sangra'
 */
export const AFTERCARE_ES: AftercareWords = {
  title: 'Después de su operación de la uña',
  toe: { left: 'Dedo gordo izquierdo', right: 'Dedo gordo derecho', unknown: 'Dedo gordo' },
  about: (toe, date, caseCode) => `${toe}, ${date}. Caso ${caseCode}.`,
  page: {
    heading: 'Su propia página',
    lines: [
      'Escanee el código cuadrado con su teléfono. Abre su propia página. No necesita cuenta ni contraseña.',
      'La página le dice qué hacer hoy. Le pide una foto del dedo, con la tarjeta alrededor, y unas preguntas cortas.',
      'Guarde esta hoja. Quien tenga el código puede abrir su página.',
    ],
    every: (hours) => (hours === 24 ? 'Mande su control todos los días.' : `Mande su control cada ${hours} horas.`),
  },
  plan: {
    heading: 'Su plan',
    dressing: (hours, until) => `La primera venda se queda puesta ${hours} horas: hasta el ${until}. No la moje.`,
    soaks: (perDay, minutes, days) =>
      `Después, ponga el dedo en agua tibia ${perDay === 1 ? 'una vez al día' : `${perDay} veces al día`}, ${minutes} minutos cada vez${days === null ? '.' : `, hasta el día ${days}.`} Séquelo bien.`,
    noSoaks: 'Sin baños. Mantenga el dedo seco.',
    cover: 'Entre los baños, cubra el dedo con una venda limpia y seca.',
    noCover: 'Entre los baños, deje el dedo al aire en casa.',
  },
  bleeding: {
    heading: 'Si sangra',
    lines: ['Apriete con un paño limpio. Ponga el pie en alto, más alto que el corazón. Apriete 20 minutos seguidos sin mirar.', '¿Sigue saliendo sangre después de 20 minutos? ¿Corre o gotea, o se marea? Llame enseguida.'],
  },
  call: {
    heading: 'Llame enseguida si',
    signs: (feverC, numbHours) => [
      'una línea roja sube por el pie o la pierna',
      `tiene fiebre (${feverC} °C o más), tiembla o se siente confuso`,
      'el dedo se pone negro, gris o frío',
      'el dolor aumenta mucho o las pastillas no ayudan',
      `el dedo sigue dormido ${numbHours} horas después de la inyección`,
      'se ve hueso o un tendón',
      'sale pus espeso, amarillo o verde',
      'el enrojecimiento se extiende',
      'algo le preocupa',
    ],
    why: 'No espere a su página ni a una foto. Llame, digan lo que digan.',
  },
  who: { heading: 'A quién llamar', hours: (hours) => `Horario: ${hours}`, emergency: (phone) => `En una emergencia, o si nadie contesta: ${phone}` },
  caution: [
    'Su página ayuda a la clínica a medir el dedo. No dice qué tiene, y no es un producto sanitario.',
    'No puede ver calor, profundidad, pus bajo la piel ni hueso. Lo que diga su clínica va primero.',
  ],
};
