/**
 * The way of sound: from the banks through bays and passages to the openings of the box, and from there to who listens.
 *
 * <p>Answers: how much of the sound power of a bank leaves by which opening, and how loud is it at a position then?
 *
 * <p>Entry types: {@link tramontane.acoustics.internal.path.SoundPath} and {@link tramontane.acoustics.internal.path.Listening}.
 *
 * <p>Energies only: the field in each bay is diffuse, which asks for bays larger than a wavelength or so; below that it is an estimate.
 * Walls let no sound through. Standing waves, and the sound that passages make themselves, are not in it.
 */
package tramontane.acoustics.internal.path;
