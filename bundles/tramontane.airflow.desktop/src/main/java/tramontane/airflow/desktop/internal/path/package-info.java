/**
 * The editor of the air path: bays as boxes along the flow, air as ribbons as wide as their share of it.
 *
 * <p>From a design comes a {@link tramontane.airflow.desktop.internal.path.PathGraph} (what is joined to what), from that a
 * {@link tramontane.airflow.desktop.internal.path.Placement} (where it stands; values play no part in it, so that nothing jumps when
 * they change), and from both and the {@link tramontane.airflow.desktop.internal.path.AirValues} of the case in front a
 * {@link tramontane.airflow.desktop.internal.path.PathPicture}. All of that is without a display; only
 * {@link tramontane.airflow.desktop.internal.path.PathView} and what it is made of know SWT.
 *
 * <p>Lengths are in the picture's own units, one of which is a pixel at zoom 1; x runs along the flow, y downwards.
 */
package tramontane.airflow.desktop.internal.path;
