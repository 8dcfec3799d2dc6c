(function () {
  "use strict";

  var stage = document.getElementById("stage");
  var still = stage.querySelector("img");
  var label = document.getElementById("name");

  // What is folded would be missing on paper.
  addEventListener("beforeprint", function () {
    document.querySelectorAll("details").forEach(function (one) { one.open = true; });
  });

  function context(canvas) {
    var wanted = { antialias: true, alpha: false, preserveDrawingBuffer: true };
    try { return canvas.getContext("webgl", wanted) || canvas.getContext("experimental-webgl", wanted); }
    catch (fault) { return null; }
  }

  function mesh_bytes() {
    var text = atob(document.getElementById("press-glb").textContent);
    var bytes = new Uint8Array(text.length);
    for (var i = 0; i < text.length; ++i) bytes[i] = text.charCodeAt(i);
    return bytes.buffer;
  }

  // Where to look and from how far, so that everything just fits into the view from a direction.
  function framing(camera, world, direction) {
    var box = new THREE.Box3().setFromObject(world), middle = box.getCenter(new THREE.Vector3());
    var right = new THREE.Vector3(0, 1, 0).cross(direction).normalize(), up = direction.clone().cross(right);
    var slope = Math.tan(THREE.Math.degToRad(camera.fov / 2)), far = 0, corner = new THREE.Vector3();
    for (var i = 0; i < 8; ++i) {
      corner.set(i & 1 ? box.max.x : box.min.x, i & 2 ? box.max.y : box.min.y, i & 4 ? box.max.z : box.min.z).sub(middle);
      var reach = Math.max(Math.abs(corner.dot(up)), Math.abs(corner.dot(right)) / camera.aspect);
      far = Math.max(far, 1.03 * reach / slope + corner.dot(direction));
    }
    return { middle: middle, far: far };
  }

  function look(camera, controls, frame, direction, zoom) {
    controls.target.copy(frame.middle);
    camera.position.copy(direction).multiplyScalar(frame.far * zoom).add(frame.middle);
    camera.near = frame.far / 50;
    camera.far = frame.far * 8;
    camera.updateProjectionMatrix();
    controls.update();
  }

  // The side of the still picture.
  function front() {
    var azimuth = 0.6, elevation = 0.4;
    return new THREE.Vector3(Math.sin(azimuth) * Math.cos(elevation), Math.sin(elevation), Math.cos(azimuth) * Math.cos(elevation));
  }

  function part_of(object) {
    for (; object; object = object.parent) if (object.userData.part) return object;
    return null;
  }

  // Slats that lie in one place would flicker without this: lines stand a little before their faces.
  function settle(world) {
    world.traverse(function (one) {
      if (!one.isMesh) return;
      one.material.polygonOffset = true;
      one.material.polygonOffsetFactor = 1;
      one.material.polygonOffsetUnits = 1;
    });
  }

  function show(gltf, canvas, gl) {
    var renderer = new THREE.WebGLRenderer({ canvas: canvas, context: gl, antialias: true });
    renderer.gammaOutput = true;
    renderer.setClearColor(0xffffff, 1);
    var scene = new THREE.Scene(), world = gltf.scene;
    var camera = new THREE.PerspectiveCamera(30, 1.5, 0.1, 100);
    scene.add(world, camera, new THREE.HemisphereLight(0xffffff, 0xb0a898, 0.75));
    var lamp = new THREE.DirectionalLight(0xffffff, 0.65);
    lamp.position.set(-0.5, 1, 0.6);
    camera.add(lamp);
    settle(world);
    var controls = new THREE.OrbitControls(camera, canvas);
    controls.enableKeys = false;
    controls.enableZoom = false;  // until the view is chosen, so that the page scrolls over it
    canvas.addEventListener("focus", function () { controls.enableZoom = true; });
    canvas.addEventListener("blur", function () { controls.enableZoom = false; });

    function draw() { renderer.render(scene, camera); }
    function fit() {
      var width = stage.clientWidth, height = Math.round(Math.min(width / 1.5, innerHeight * 0.8));
      if (!width) return;
      renderer.setPixelRatio(Math.min(devicePixelRatio || 1, 2));
      renderer.setSize(width, height, false);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      draw();
    }

    var mixer = new THREE.AnimationMixer(world);
    var opening = gltf.animations.length ? mixer.clipAction(gltf.animations[0]) : null;
    if (opening) opening.play();
    // Stays as near as it was, measured by what there is to see.
    function open(share) {
      if (!opening) return;
      var direction = camera.position.clone().sub(controls.target), distance = direction.length();
      direction.normalize();
      var zoom = distance / framing(camera, world, direction).far;
      opening.time = share * opening.getClip().duration;
      mixer.update(0);
      look(camera, controls, framing(camera, world, direction), direction, zoom);
      draw();
    }

    var ray = new THREE.Raycaster(), pointer = new THREE.Vector2();
    function name_at(x, y) {
      var box = canvas.getBoundingClientRect();
      pointer.set((x - box.left) / box.width * 2 - 1, 1 - (y - box.top) / box.height * 2);
      ray.setFromCamera(pointer, camera);
      var hit = ray.intersectObject(world, true).filter(function (one) {
        if (!one.object.isMesh) return false;
        for (var up = one.object; up; up = up.parent) if (!up.visible) return false;
        return true;
      })[0];
      var part = hit && part_of(hit.object);
      label.textContent = part ? part.name + (part.userData.stock ? " · " + part.userData.stock : "") : "";
    }

    var slider = document.getElementById("open");
    slider.value = 0;
    slider.addEventListener("input", function () { open(Number(slider.value)); });
    document.querySelectorAll("#kinds input").forEach(function (box) {
      box.checked = true;
      box.addEventListener("change", function () {
        world.traverse(function (one) { if (one.userData.title === box.dataset.kind) one.visible = box.checked; });
        draw();
      });
    });
    document.getElementById("front").addEventListener("click", function () {
      look(camera, controls, framing(camera, world, front()), front(), 1);
      draw();
    });
    canvas.addEventListener("pointermove", function (event) { if (!event.buttons) name_at(event.clientX, event.clientY); });
    canvas.addEventListener("pointerleave", function () { label.textContent = ""; });
    canvas.addEventListener("pointerdown", function (event) { canvas.focus({ preventScroll: true }); name_at(event.clientX, event.clientY); });
    controls.addEventListener("change", draw);
    addEventListener("resize", fit);

    still.hidden = true;
    stage.insertBefore(canvas, still);
    ["controls", "hint"].forEach(function (id) { document.getElementById(id).hidden = false; });
    fit();
    look(camera, controls, framing(camera, world, front()), front(), 1);
    draw();
    canvas.dataset.ready = "yes";
  }

  function start() {
    var canvas = document.createElement("canvas"), gl = context(canvas);
    if (!gl) return;  // the still picture stands
    canvas.tabIndex = 0;
    canvas.setAttribute("aria-label", "The press in three dimensions");
    var failed = function () { still.hidden = false; };
    new THREE.GLTFLoader().parse(mesh_bytes(), "", function (gltf) {
      canvas.addEventListener("webglcontextlost", function () { canvas.hidden = true; failed(); });
      show(gltf, canvas, gl);
    }, failed);
  }

  start();
})();
