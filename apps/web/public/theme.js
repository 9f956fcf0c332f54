// Before the first paint, so that a chosen theme does not flash.
try {
  const theme = localStorage.getItem('panewright.theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {
  // Storage may be closed to us; the system's theme stands.
}
