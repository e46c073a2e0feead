/** A phone set to dark gets the stage colours. */
export function followScheme(): void {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const apply = (): void => {
    document.documentElement.dataset['stage'] = dark.matches ? 'dark' : 'light';
  };
  apply();
  dark.addEventListener('change', apply);
}
