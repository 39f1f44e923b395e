/** What property pages and the design tree show, without widgets: immutable rows made of forms and values, and typed text read back. */
package tramontane.desktop.internal.pages;
