/** What a browser makes of the pages. */
package withers.report.browser;
