/** The yardstick of recognising records, which needs their splitter and their hash. */
package withers.ingest.known;
