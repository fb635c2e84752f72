/**
 * Tamper-evidence: a seal names files by digest and is signed with the key of whoever sealed them.
 *
 * <p>A seal is a text file that common tools can check without this program:
 *
 * <pre>
 * tripline-seal: 1
 * sealed: 2026-03-02T09:10:11Z
 * file: SHA-256 BYTES ROLE PATH
 * ...
 * key: public key, base64 of its X.509 form
 * signature: Ed25519 (RFC 8032) over all bytes before this line, base64
 * </pre>
 *
 * <p>Paths are relative to the seal's folder, so that a folder can move as a whole. What a seal
 * cannot tell: who held the key, and whether the clock was right. Entries: {@link
 * tripline.harness.seal.Sealing}, {@link tripline.harness.seal.SealCheck}. Files are read in
 * blocks; any thread, one at a time for one seal.
 */
@NullMarked
package tripline.harness.seal;

import org.jspecify.annotations.NullMarked;
