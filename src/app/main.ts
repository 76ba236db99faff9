import { mount } from 'svelte';
import App from './App.svelte';
import { surroundings } from './surroundings.ts';
import './style/tokens.css';
import './style/base.css';
import './style/print.css';

const target = document.getElementById('app');
if (target) mount(App, { target, props: { outside: await surroundings() } });
