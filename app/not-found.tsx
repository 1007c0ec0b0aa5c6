import { Page } from './_components/page';

/** Drawn by our own style sheet: the built-in page carries a style that the security policy refuses. */
export default function NotFoundPage() {
  return (
    <Page name="Toe check-in">
      <h1>This page is not here</h1>
      <p>Open your own link again: it is on your care sheet. If your toe worries you, do not wait for it: call your clinic.</p>
      <p lang="es">Esta página no está aquí. Abra su enlace otra vez: está en su hoja de cuidados. Si su dedo le preocupa, no espere: llame a la clínica.</p>
    </Page>
  );
}
