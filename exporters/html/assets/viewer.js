(function () {
  "use strict";

  var stage = document.getElementById("stage");
  var still = stage.querySelector("img");
  var label = document.getElementById("name");
  var slider = document.getElementById("open");
  var parts_of_view = ["controls", "hint"].map(function (id) { return document.getElementById(id); });

  // ---- The page round the view

  // What is folded would be missing on paper.
  function unfold_for_print() {
    var opened = [];
    addEventListener("beforeprint", function () {
      opened = Array.from(document.querySelectorAll("details:not([open])"));
      opened.forEach(function (one) { one.open = true; });
    });
    addEventListener("afterprint", function () {
      opened.forEach(function (one) { one.open = false; });
      opened = [];
    });
  }

  // A table or plot that is wider than the screen says so, and keys can reach it.
  function mark_sliding() {
    document.querySelectorAll(".wide").forEach(function (one) {
      var slides = one.scrollWidth > one.clientWidth + 1;
      one.classList.toggle("slides", slides);
      if (slides) one.tabIndex = 0; else one.removeAttribute("tabindex");
    });
  }

  // ---- Looking at the press

  // Where to look and from how far, so that a box just fits into the view from a direction.
  function framing(camera, box, direction) {
    var middle = box.getCenter(new THREE.Vector3());
    var right = new THREE.Vector3(0, 1, 0).cross(direction).normalize(), up = direction.clone().cross(right);
    var slope = Math.tan(THREE.Math.degToRad(camera.fov / 2)), far = 0, corner = new THREE.Vector3();
    for (var i = 0; i < 8; ++i) {
      corner.set(i & 1 ? box.max.x : box.min.x, i & 2 ? box.max.y : box.min.y, i & 4 ? box.max.z : box.min.z).sub(middle);
      var reach = Math.max(Math.abs(corner.dot(up)), Math.abs(corner.dot(right)) / camera.aspect);
      far = Math.max(far, 1.03 * reach / slope + corner.dot(direction));
    }
    return { middle: middle, far: far };
  }

  // From a direction, `zoom` times as far as fits.
  function look(camera, controls, frame, direction, zoom) {
    controls.target.copy(frame.middle);
    controls.minDistance = 0.15 * frame.far;
    controls.maxDistance = 3 * frame.far;
    camera.position.copy(direction).multiplyScalar(frame.far * zoom).add(frame.middle);
    camera.near = frame.far / 50;
    camera.far = frame.far * 8;
    camera.updateProjectionMatrix();
    controls.update();
  }

  // The side of the still picture.
  function first_direction() {
    var azimuth = 0.6, elevation = 0.4;
    return new THREE.Vector3(Math.sin(azimuth) * Math.cos(elevation), Math.sin(elevation), Math.cos(azimuth) * Math.cos(elevation));
  }

  function lit_scene(world, camera) {
    var scene = new THREE.Scene();
    scene.background = new THREE.Color(0xffffff);  // a clear colour would be forgotten when the view is lost
    scene.add(world, camera, new THREE.HemisphereLight(0xffffff, 0xb0a898, 0.75));
    var lamp = new THREE.DirectionalLight(0xffffff, 0.65);
    lamp.position.set(-0.5, 1, 0.6);
    camera.add(lamp);
    return scene;
  }

  // Faces stand a little behind their edges, or edges would break up. Returns the faces.
  function settled(world) {
    var faces = [];
    world.traverse(function (one) {
      if (!one.isMesh) return;
      faces.push(one);
      one.material.polygonOffset = true;
      one.material.polygonOffsetFactor = 1;
      one.material.polygonOffsetUnits = 1;
    });
    return faces;
  }

  // Draws once a frame, however often it is asked to.
  function painter(paint) {
    var asked = false;
    return function () {
      if (asked) return;
      asked = true;
      requestAnimationFrame(function () { asked = false; paint(); });
    };
  }

  function shown(object) {
    for (; object; object = object.parent) if (!object.visible) return false;
    return true;
  }

  function named(object) {
    while (object && !object.userData.part) object = object.parent;
    if (!object) return "";
    return object.name + (object.userData.stock ? " · " + object.userData.stock : "");
  }

  // The name of the piece at a place of the window.
  function picker(canvas, camera, faces) {
    var ray = new THREE.Raycaster(), at = new THREE.Vector2();
    return function (x, y) {
      var box = canvas.getBoundingClientRect();
      at.set((x - box.left) / box.width * 2 - 1, 1 - (y - box.top) / box.height * 2);
      ray.setFromCamera(at, camera);
      var hit = ray.intersectObjects(faces.filter(shown))[0];
      return hit ? named(hit.object) : "";
    };
  }

  // Boxes of the press shut and open, between which it goes in straight lines.
  function opener(gltf) {
    var clip = gltf.animations[0], world = gltf.scene;
    if (!clip) return null;
    world.name = "";  // pieces are found by their names, and the job may be called like one of them
    var mixer = new THREE.AnimationMixer(world), action = mixer.clipAction(clip);
    action.play();
    function set(share) {
      action.time = share * clip.duration;
      mixer.update(0);
      world.updateMatrixWorld(true);
    }
    function measured(share) {
      set(share);
      return new THREE.Box3().setFromObject(world);
    }
    var open = measured(1), shut = measured(0);
    return {
      set: set,
      box: function (share) {
        return new THREE.Box3(shut.min.clone().lerp(open.min, share), shut.max.clone().lerp(open.max, share));
      }
    };
  }

  // ---- Mouse, finger and keys

  // Until the view is chosen by a click or a tap, wheel and finger scroll the page over it.
  function choose_by_click(canvas, controls) {
    controls.enableKeys = false;
    function chosen(yes) {
      controls.enableZoom = yes;
      canvas.style.touchAction = yes ? "none" : "pan-y";
    }
    canvas.addEventListener("focus", function () { chosen(true); });
    canvas.addEventListener("blur", function () { chosen(false); });
    canvas.addEventListener("pointerup", function () { canvas.focus({ preventScroll: true }); });
    chosen(false);
  }

  function turn_by_keys(canvas, camera, controls, draw) {
    var turns = { ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, -0.1], ArrowDown: [0, 0.1] };
    var nearer = { "+": 0.9, "=": 0.9, "-": 1 / 0.9 };
    canvas.addEventListener("keydown", function (event) {
      var turn = turns[event.key], factor = nearer[event.key] || 1;
      if (!turn && factor === 1) return;
      event.preventDefault();
      var place = new THREE.Spherical().setFromVector3(camera.position.clone().sub(controls.target));
      if (turn) {
        place.theta += turn[0];
        place.phi = Math.min(Math.max(place.phi + turn[1], 0.05), Math.PI - 0.05);
      }
      place.radius *= factor;
      camera.position.setFromSpherical(place).add(controls.target);
      controls.update();
      draw();
    });
  }

  // A finger that lifts leaves the canvas: its name stays to be read.
  function tell_names(canvas, name_at) {
    function tell(event) { label.textContent = name_at(event.clientX, event.clientY); }
    canvas.addEventListener("pointermove", function (event) { if (!event.buttons) tell(event); });
    canvas.addEventListener("pointerdown", tell);
    canvas.addEventListener("pointerleave", function (event) {
      if (event.pointerType !== "touch") label.textContent = "";
    });
  }

  // Shows 3D or the still picture; a view that was lost may come back.
  function show_canvas(canvas, yes) {
    canvas.hidden = !yes;
    still.hidden = yes;
    parts_of_view.forEach(function (one) { one.hidden = !yes; });
  }

  function keep_through_loss(canvas, draw) {
    canvas.addEventListener("webglcontextlost", function (event) {
      event.preventDefault();
      show_canvas(canvas, false);
    });
    canvas.addEventListener("webglcontextrestored", function () {
      show_canvas(canvas, true);
      draw();
    });
  }

  // ---- Put together

  function show(gltf, canvas, gl) {
    var world = gltf.scene, camera = new THREE.PerspectiveCamera(30, 1.5, 0.1, 100);
    var renderer = new THREE.WebGLRenderer({ canvas: canvas, context: gl, antialias: true });
    renderer.gammaOutput = true;
    var scene = lit_scene(world, camera), faces = settled(world), opening = opener(gltf);
    var controls = new THREE.OrbitControls(camera, canvas);
    var draw = painter(function () {
      renderer.render(scene, camera);
      canvas.dataset.ready = "yes";
    });

    function box_now() { return opening ? opening.box(Number(slider.value)) : new THREE.Box3().setFromObject(world); }
    function from(direction, zoom) { look(camera, controls, framing(camera, box_now(), direction), direction, zoom); }
    function fit() {
      var width = stage.clientWidth, height = Math.round(Math.min(width / 1.5, innerHeight * 0.8));
      if (!width) return;
      renderer.setPixelRatio(Math.min(devicePixelRatio || 1, 2));
      renderer.setSize(width, height, false);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      draw();
    }
    // Stays as near as it was, measured by what there is to see.
    var frame_box = box_now();
    function open() {
      var direction = camera.position.clone().sub(controls.target), distance = direction.length();
      direction.normalize();
      var zoom = distance / framing(camera, frame_box, direction).far;
      frame_box = box_now();
      if (opening) opening.set(Number(slider.value));
      from(direction, zoom);
      changed();
    }
    function changed() {
      label.textContent = "";
      draw();
    }

    slider.value = 0;
    slider.addEventListener("input", open);
    document.querySelectorAll("#kinds input").forEach(function (box) {
      box.checked = true;
      box.addEventListener("change", function () {
        world.traverse(function (one) { if (one.userData.title === box.dataset.kind) one.visible = box.checked; });
        changed();
      });
    });
    document.getElementById("front").addEventListener("click", function () {
      from(first_direction(), 1);
      changed();
    });
    choose_by_click(canvas, controls);
    turn_by_keys(canvas, camera, controls, draw);
    tell_names(canvas, picker(canvas, camera, faces));
    keep_through_loss(canvas, draw);
    controls.addEventListener("change", draw);
    addEventListener("resize", fit);

    stage.insertBefore(canvas, still);
    show_canvas(canvas, true);
    fit();
    from(first_direction(), 1);
    draw();
  }

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

  // Without 3D, or where it cannot be read, the still picture stands.
  function start() {
    var canvas = document.createElement("canvas"), gl = context(canvas);
    if (!gl) return;
    canvas.tabIndex = 0;
    canvas.setAttribute("aria-label", "The press in three dimensions: arrows turn it, plus and minus come nearer and go farther");
    new THREE.GLTFLoader().parse(mesh_bytes(), "", function (gltf) { show(gltf, canvas, gl); }, function () {});
  }

  unfold_for_print();
  addEventListener("resize", mark_sliding);
  mark_sliding();
  start();
})();
