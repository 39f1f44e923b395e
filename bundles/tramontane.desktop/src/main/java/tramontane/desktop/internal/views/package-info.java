/** The window's own small views: jobs, log, help, keys, welcome, preferences. */
package tramontane.desktop.internal.views;
