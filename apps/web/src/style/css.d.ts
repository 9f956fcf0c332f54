// Style sheets are taken in for their effect alone.
declare module '*.css';
