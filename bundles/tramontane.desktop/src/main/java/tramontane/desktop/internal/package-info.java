/** What stands behind the bundle's services. */
package tramontane.desktop.internal;
