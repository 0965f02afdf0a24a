/** Style sheets are imported for their effect alone; the build puts them beside the page. */
declare module '*.css';
