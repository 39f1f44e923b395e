/** Toys: each class is the activator of a bundle of its own that {@link tramontane.engine.test.ToyBundle} packs. */
package tramontane.engine.test.toys;
