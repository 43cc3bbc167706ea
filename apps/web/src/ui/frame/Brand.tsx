/** The product's mark: a staff gauge standing in water. */
export function BrandMark() {
  return (
    <svg width="16" height="26" viewBox="0 0 16 26" aria-hidden="true">
      <path d="M0 16h16v10H0z" fill="var(--water)" />
      <path d="M3 0h10v26H3z" fill="var(--paper)" stroke="var(--ink)" strokeWidth="1.5" />
      <path d="M3.5 4h5v3h-5zM3.5 10h5v3h-5zM3.5 16h5v3h-5zM3.5 22h5v3h-5z" fill="var(--ink)" />
    </svg>
  );
}
