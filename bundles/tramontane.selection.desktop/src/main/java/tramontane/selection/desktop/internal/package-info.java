/** What stands behind the bundle's services. */
package tramontane.selection.desktop.internal;
