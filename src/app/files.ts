/** Characters that some file system refuses. */
const REFUSED = /[\p{Cc}<>:"/\\|?*]+/gu;

/** A name that every file system takes. */
export const fileName = (name: string): string => name.replace(REFUSED, '-').trim() || 'design';

/** Hands a file to the browser to save. */
export const saveFile = (name: string, content: string | Uint8Array): void => {
  const url = URL.createObjectURL(
    new Blob([typeof content === 'string' ? content : new Uint8Array(content)]),
  );
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName(name);
  link.click();
  // The browser has taken the bytes once the click is handled; a moment more is harmless.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
};
