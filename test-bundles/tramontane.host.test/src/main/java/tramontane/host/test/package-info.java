/** Tests of the host, inside it: everything that the product brings is there, resolved, running and satisfied. */
package tramontane.host.test;
