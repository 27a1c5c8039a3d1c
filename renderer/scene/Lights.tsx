/** A quiet studio: soft surroundings for metal to mirror, one key light from above. */

import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { PMREMGenerator } from 'three';
import { RoomEnvironment } from 'three/examples/jsm/environments/RoomEnvironment.js';

/** Lights of the scene; the surroundings are rendered once. */
export function Lights() {
  const { gl, scene, invalidate } = useThree();
  useEffect(() => {
    const generator = new PMREMGenerator(gl);
    const surroundings = generator.fromScene(new RoomEnvironment(), 0.04);
    scene.environment = surroundings.texture;
    scene.environmentIntensity = 0.6;
    invalidate();
    return () => {
      scene.environment = null;
      surroundings.dispose();
      generator.dispose();
    };
  }, [gl, scene, invalidate]);
  return (
    <>
      <directionalLight position={[-200, 500, 600]} intensity={1.1} />
      <directionalLight position={[500, -200, 300]} intensity={0.35} />
    </>
  );
}
