package tripline.harness.seal;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.NoSuchAlgorithmException;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.InvalidKeySpecException;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;

/** Signatures of RFC 8032 as the platform offers them. */
final class Ed25519 {
  private static final String NAME = "Ed25519";

  private Ed25519() {}

  static KeyPair newPair() {
    try {
      return KeyPairGenerator.getInstance(NAME).generateKeyPair();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Java 15 and newer have Ed25519", e);
    }
  }

  static PrivateKey privateKey(byte[] pkcs8) throws InvalidKeySpecException {
    return factory().generatePrivate(new PKCS8EncodedKeySpec(pkcs8));
  }

  static PublicKey publicKey(byte[] x509) throws InvalidKeySpecException {
    return factory().generatePublic(new X509EncodedKeySpec(x509));
  }

  private static KeyFactory factory() {
    try {
      return KeyFactory.getInstance(NAME);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Java 15 and newer have Ed25519", e);
    }
  }

  static byte[] sign(PrivateKey key, byte[] message) throws GeneralSecurityException {
    Signature signature = Signature.getInstance(NAME);
    signature.initSign(key);
    signature.update(message);
    return signature.sign();
  }

  /** False for a signature that is not one, too. */
  static boolean verifies(PublicKey key, byte[] message, byte[] signature) {
    try {
      Signature check = Signature.getInstance(NAME);
      check.initVerify(key);
      check.update(message);
      return check.verify(signature);
    } catch (GeneralSecurityException e) {
      return false;
    }
  }

  /** What people compare: SHA-256 of the key's X.509 form, the first 16 bytes in groups of two. */
  static String fingerprint(PublicKey key) {
    byte[] digest = Digest.begun().digest(key.getEncoded());
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 16; i += 2) {
      text.append(i == 0 ? "" : "-").append(HexFormat.of().formatHex(digest, i, i + 2));
    }
    return text.toString();
  }
}
