/** Tests of the running product from the outside: engine, analyses and command line, with toy bundles that come and go. */
package tramontane.engine.test;
