package withers.fact;

/**
 * What a scan showed. A chip that is not detected may still be there: scan again, whole body, with
 * a universal scanner.
 */
public enum ScanResult {
  READ,
  NOT_DETECTED
}
