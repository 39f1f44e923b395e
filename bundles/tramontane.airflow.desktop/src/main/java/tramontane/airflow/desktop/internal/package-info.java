/** What stands behind the bundle's services. */
package tramontane.airflow.desktop.internal;
